import { element, setText } from '../../ui/dom.ts';
import { afterPress, watchPresses } from '../../ui/fields/afterPress.ts';

interface TitleField {
  readonly element: HTMLElement;
  show(title: string): void;
}

/** What the job is called; a refused title stays as it was typed, with what is wrong beside it. */
export function createTitleField(onTitle: (title: string) => string | null): TitleField {
  let shown = '';
  watchPresses();
  const problem = element('p', { class: 'field-problem', id: 'job-title-problem', role: 'alert' });
  const input = element('input', {
    type: 'text',
    id: 'job-title',
    autocomplete: 'off',
    'aria-describedby': problem.id,
    onchange: () => afterPress(() => say(input.value === shown ? null : onTitle(input.value))),
  });

  function say(wrong: string | null): void {
    setText(problem, wrong ?? '');
    input.setAttribute('aria-invalid', String(wrong !== null));
  }

  return {
    element: element(
      'div',
      { class: 'job-title' },
      element('label', { for: 'job-title' }, 'Job'),
      input,
      problem,
    ),
    show(title) {
      if (title === shown) return;
      shown = title;
      input.value = title;
      say(null);
    },
  };
}
