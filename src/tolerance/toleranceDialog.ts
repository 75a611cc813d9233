import './tolerance.css';
import type { Scene } from '../../shared/core/scene.ts';
import { writeCsv } from '../../shared/files/csv.ts';
import { writeTolerance } from '../../shared/files/toleranceFile.ts';
import { machinesOf, type ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { errorText } from '../clients/errorText.ts';
import { ToleranceClient } from '../clients/toleranceClient.ts';
import { WorkerFailure } from '../clients/workerHost.ts';
import { Dialog } from '../ui/dialog.ts';
import { button, element, setText } from '../ui/dom.ts';
import { fileName, saveText } from '../ui/files.ts';
import { timeLeftText } from '../ui/timeLeft.ts';
import { NumberClock, TOLD } from '../ui/timing/numberClock.ts';
import { offeredLimits } from './offeredLimits.ts';
import { resultRows } from './resultRows.ts';
import { ResultView } from './resultView.ts';
import { StudyForm } from './studyForm.ts';

interface ToleranceOptions {
  /** The scene as it is set now. */
  scene(): Scene;
  /** Puts a machine on the bench as one step of undo. */
  openOnBench(scene: Scene, text: string): void;
}

/** How sure is this? The scene is built many times over, each machine a little different, and run. */
export class ToleranceDialog {
  readonly #options: ToleranceOptions;
  readonly #client = new ToleranceClient();
  readonly #form: StudyForm;
  readonly #bar = element('progress', { 'aria-label': 'Progress', hidden: true });
  readonly #status = element('p', { class: 'tolerance-status', role: 'status' });
  readonly #view = new ResultView((run) => this.#openMachine(run));
  readonly #run = button('Build and run', () => void this.#start(), { class: 'primary' });
  readonly #cancel = button('Cancel', () => this.#client.cancel());
  readonly #save = button('Save study', () => this.#saveStudy(), {
    title: 'Saves the study as a file, for the command line or to open again',
  });
  readonly #saveResults = button('Save results (CSV)', () => this.#saveTable());
  readonly #dialog: Dialog;
  readonly #subject = element('p', {});
  #study: ToleranceStudy | null = null;
  /** Under way until the machine as it is has been measured, or the dialog is closed. */
  #offer: Promise<void> = Promise.resolve();
  /** Title of the machine that was put on the bench from here: what is entered stays for its study. */
  #opened: string | null = null;

  constructor(options: ToleranceOptions) {
    this.#options = options;
    this.#form = new StudyForm(() => options.scene());
    this.#cancel.hidden = this.#saveResults.hidden = true;
    this.#dialog = new Dialog({
      title: 'How sure is this?',
      class: 'wide tolerance',
      buttons: [this.#run, this.#cancel, this.#save, this.#saveResults],
      onClose: () => this.#client.cancel(),
    });
    this.#dialog.fill(
      this.#subject,
      this.#form.element,
      this.#dialog.buttons,
      this.#bar,
      this.#status,
      this.#view.element,
    );
  }

  open(): void {
    const { title } = this.#options.scene();
    this.#open();
    if (title === this.#opened) return;
    this.#form.offer();
    this.#offer = this.#offerLimits();
  }

  /** Opens with a study from a file; its scene is on the bench by now. */
  openStudy(study: ToleranceStudy): void {
    this.#form.show(study);
    this.#open();
  }

  #open(): void {
    setText(
      this.#subject,
      `${this.#options.scene().title}: the scene on the bench is built many times over. Each machine is a little different, ` +
        'and is run for one cycle of its program with the gains as they are.',
    );
    this.#dialog.open();
  }

  /** Measures the machine as it is, unless a person has entered limits, and offers limits that follow from it. */
  async #offerLimits(): Promise<void> {
    if (!this.#form.takesLimits) return;
    const scene = this.#options.scene();
    this.#form.offerLimits({}, 'Measuring the machine on the bench, to suggest a limit …');
    try {
      const result = await this.#client.nominal(scene);
      if (!result) return;
      const { limits, text } = offeredLimits(scene, result);
      this.#form.offerLimits(limits, text);
    } catch (error) {
      this.#form.offerLimits({}, `No limit is offered. ${errorText(error)}`);
    }
  }

  async #start(): Promise<void> {
    this.#run.disabled = true;
    await this.#offer;
    this.#run.disabled = false;
    const study = this.#form.study();
    if (!study) return;
    this.#study = study;
    this.#view.begin(study);
    this.#showWorking(true);
    setText(this.#status, 'Finding out how many cycles the start takes …');
    const begun = performance.now();
    const pacing = new NumberClock(TOLD);
    let count = 0;
    try {
      const isDone = await this.#client.run(study, {
        onProgress: (done) => {
          count = done;
          if (pacing.isDue()) this.#showProgress(done, study.runs, performance.now() - begun);
        },
        onSummary: (summary, fresh) => this.#view.show(summary, fresh),
      });
      const took = `${((performance.now() - begun) / 1000).toFixed(1)} s`;
      setText(
        this.#status,
        isDone
          ? `${study.runs} machines in ${took}.`
          : `Cancelled. What is shown comes from ${this.#view.results.length} of ${study.runs} machines.`,
      );
    } catch (error) {
      setText(this.#status, `${errorText(error)} ${count} of ${study.runs} machines had run.`);
      setText(this.#run, error instanceof WorkerFailure ? 'Try again' : 'Build and run');
    } finally {
      this.#showWorking(false);
    }
  }

  #showWorking(working: boolean): void {
    if (working) setText(this.#run, 'Build and run');
    this.#run.disabled = working;
    this.#cancel.hidden = this.#bar.hidden = !working;
    this.#saveResults.hidden = working || this.#view.results.length === 0;
    this.#bar.value = 0;
  }

  #showProgress(done: number, total: number, elapsed: number): void {
    this.#bar.max = total;
    this.#bar.value = done;
    setText(
      this.#status,
      `${done} of ${total} machines have run, ${timeLeftText(done, total, elapsed / 1000)}`,
    );
  }

  #openMachine(run: number): void {
    const study = this.#study;
    if (!study) return;
    const { scene } = machinesOf(study)(run);
    const title = `${study.scene.title}, machine ${run}`;
    this.#opened = title;
    this.#dialog.close();
    this.#options.openOnBench({ ...scene, id: null, title }, `machine ${run} of the tolerance study`);
  }

  #saveStudy(): void {
    const study = this.#form.study();
    if (study) saveText(fileName(`${study.scene.title} tolerances`, 'json'), writeTolerance(study));
  }

  #saveTable(): void {
    const study = this.#study;
    if (!study) return;
    const rows = resultRows(study, this.#view.results);
    saveText(fileName(`${study.scene.title} machines`, 'csv'), writeCsv(rows), 'text/csv');
  }
}
