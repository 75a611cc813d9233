import type { Scene } from '../core/scene.ts';
import type { PositioningTest, TestResult } from './accuracy.ts';

/** Positioning of one machine when it was new and after its kilometres. */
export interface WearTest {
  readonly fresh: TestResult<PositioningTest>;
  readonly worn: TestResult<PositioningTest>;
}

/** The commands of the wear worker. */
export interface WearCommands {
  /** Tests copies of the machine over its travel, every part at room temperature. */
  test(scene: Scene): WearTest;
}
