import type { Presets, Scene } from '../../shared/core/scene.ts';
import { chooseCandidates } from '../../shared/sizing/chooseCandidates.ts';
import { sizeCandidate } from '../../shared/sizing/sizeCandidate.ts';
import type { Sizing } from '../../shared/sizing/sizing.ts';
import type { CandidateChoice } from '../../shared/study/candidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { PartChoice } from '../../shared/study/parts.ts';

interface SizedDrive {
  readonly choice: CandidateChoice;
  readonly scene: Scene;
  readonly sizing: Sizing;
}

/** The comparable drives of a job, one of each type, with the parts that it asks for and their sizing. */
export function sizedDrives(job: Job, parts: PartChoice | undefined, presets: Presets): SizedDrive[] {
  return chooseCandidates(job, presets).map((plain) => {
    const choice = parts ? { ...plain, parts } : plain;
    const scene = candidateScene(job, choice, presets);
    return { choice, scene, sizing: sizeCandidate(job, scene) };
  });
}

/** Those that their sizing does not rule out. */
export function drivesThatPass(job: Job, parts: PartChoice | undefined, presets: Presets): SizedDrive[] {
  return sizedDrives(job, parts, presets).filter(({ sizing }) => sizing.passes);
}
