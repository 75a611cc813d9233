import { DEFAULT_SCENE, SHELF } from '../../scenes/index.ts';
import type { Problem } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { isLessonLink } from '../../shared/files/lessonLinkKey.ts';
import { readLink } from '../../shared/files/sceneLink.ts';
import { isStudyLink } from '../../shared/files/studyLinkKey.ts';

export interface Opening {
  readonly scene: Scene;
  /** What was wrong with the link; empty without a link. */
  readonly problems: readonly Problem[];
}

/** The scene that a page opens with: the one its address carries, or the first of the shelf. */
export function openingScene(hash: string): Opening {
  if (hash.length < 2 || isStudyLink(hash) || isLessonLink(hash))
    return { scene: DEFAULT_SCENE, problems: [] };
  const read = readLink(hash, SHELF);
  return 'scene' in read
    ? { scene: read.scene, problems: [] }
    : { scene: DEFAULT_SCENE, problems: read.problems };
}
