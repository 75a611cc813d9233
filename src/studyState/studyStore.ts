import { at } from '../../shared/core/at.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Presets } from '../../shared/core/scene.ts';
import { setUnitSystem } from '../../shared/core/unitSystem.ts';
import { sizeCandidate } from '../../shared/sizing/sizeCandidate.ts';
import { type CandidateChoice, candidateLetter, type Study } from '../../shared/study/candidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { CandidateOutcome, CandidateProgress, KnownOutcome } from '../../shared/study/outcome.ts';
import { type Ranges, rangesOf } from '../../shared/study/ranges.ts';
import { type Timeline, UndoHistory } from '../bench/undo.ts';
import { shareDone } from './candidateProgress.ts';
import { sameResults } from './changes.ts';
import { FoundGains } from './foundGains.ts';
import { FoundOutcomes } from './foundOutcomes.ts';
import { sameScene, sameTests } from './sameSimulation.ts';
import {
  type CandidateState,
  type ConfidenceState,
  NO_CONFIDENCE,
  NO_VERDICT,
  type StudyState,
  type UnitSystem,
  type VerdictState,
} from './state.ts';

/** The study on the page, and what is known of it. Whoever draws it subscribes. */
export class StudyStore {
  #state: StudyState;
  readonly #presets: Presets;
  readonly #subscribers = new Set<(state: StudyState) => void>();
  readonly #history: UndoHistory<Study>;
  /** What was found of candidates as they were, for when they are so again. */
  readonly #found = new FoundOutcomes();
  readonly #tuned = new FoundGains();

  constructor(study: Study, presets: Presets) {
    this.#presets = presets;
    this.#history = new UndoHistory(study);
    this.#state = {
      study,
      units: 'metric',
      candidates: candidatesOf(study, presets, []),
      refused: [],
      isRunning: false,
      begun: null,
      verdict: NO_VERDICT,
      confidence: NO_CONFIDENCE,
      isReportDue: false,
    };
  }

  get state(): StudyState {
    return this.#state;
  }

  /** Returns how to end the subscription. */
  subscribe(subscriber: (state: StudyState) => void): () => void {
    this.#subscribers.add(subscriber);
    return () => this.#subscribers.delete(subscriber);
  }

  /** The study with at most so many steps of its past and its undone future. */
  timeline(depth: number): Timeline<Study> {
    return this.#history.timeline(depth);
  }

  /** Goes on from where a timeline ends, with its steps. */
  restore(timeline: Timeline<Study>): void {
    this.#history.restore(timeline);
    this.#use();
  }

  undo(): void {
    if (this.#history.undo()) this.#use();
  }

  redo(): void {
    if (this.#history.redo()) this.#use();
  }

  /** The system of units in which everything is shown from now on. */
  setUnits(units: UnitSystem): void {
    setUnitSystem(units);
    this.#state = { ...this.#state, units };
    this.refresh();
  }

  setRefused(refused: readonly string[]): void {
    if (refused.join() !== this.#state.refused.join()) this.#take({ ...this.#state, refused });
  }

  /** Words everything again, after a change of the units in which it is printed: no calculation changes by it, but its texts do. */
  refresh(): void {
    const { job } = this.#state.study;
    const candidates = this.#state.candidates.map((candidate) => ({
      ...candidate,
      sizing: sizeCandidate(job, candidate.scene),
    }));
    this.#take({ ...this.#state, candidates });
  }

  /** Another study, as it was opened. */
  open(study: Study): void {
    this.#step(study);
  }

  /** Another job for the same drives; those that have to be tuned anew lose their gains. */
  setJob(job: Job): void {
    const { job: was, candidates } = this.#state.study;
    this.#step({
      ...this.#state.study,
      job,
      candidates: candidates.map((candidate) =>
        sameTask(was, job, candidate, this.#presets) ? candidate : { ...candidate, gains: null },
      ),
    });
  }

  setCandidates(candidates: readonly CandidateChoice[]): void {
    this.#step({ ...this.#state.study, candidates });
  }

  /** How far the inputs of the job may be off. */
  setRanges(ranges: Ranges): void {
    this.#step({ ...this.#state.study, ranges });
  }

  /** What a candidate was tuned to: no step of its own, since it follows from the rest. */
  setGains(index: number, gains: ParameterChanges): void {
    const { study } = this.#state;
    const candidates = study.candidates.map((candidate, k) =>
      k === index ? { ...candidate, gains } : candidate,
    );
    this.#history.amend({ ...study, candidates });
    this.#use();
  }

  /** What is known of a candidate as it is, under whichever job. */
  knownOf(index: number): KnownOutcome | null {
    return this.#found.ofAxis(at(this.#state.candidates, index).scene);
  }

  setOutcome(index: number, outcome: CandidateOutcome): void {
    this.#change((candidate, k) => (k === index ? this.#withOutcome(candidate, outcome) : candidate));
  }

  /** Candidates whose outcome is being looked for, by index. */
  setSought(indices: readonly number[]): void {
    this.#change((candidate, k) => (indices.includes(k) ? { ...candidate, isSought: true } : candidate));
  }

  /** What the search came to, by index: null where it found nothing. What was simulated meanwhile stays. */
  setFound(found: ReadonlyMap<number, CandidateOutcome | null>): void {
    this.#change((candidate, k) => {
      const outcome = found.get(k);
      if (outcome === undefined) return candidate;
      return outcome && candidate.outcome === null
        ? this.#withOutcome(candidate, outcome)
        : { ...candidate, isSought: false };
    });
  }

  /** How far candidates have come, by index. */
  setProgress(told: ReadonlyMap<number, CandidateProgress>): void {
    this.#change((candidate, k) => {
      const progress = told.get(k);
      return progress ? { ...candidate, progress, error: null } : candidate;
    });
  }

  setError(index: number, error: string): void {
    this.#change((candidate, k) => (k === index ? { ...candidate, error, progress: null } : candidate));
  }

  setVerdict(changes: Partial<VerdictState>): void {
    this.#take({ ...this.#state, verdict: { ...this.#state.verdict, ...changes } });
  }

  setConfidence(changes: Partial<ConfidenceState>): void {
    this.#take({ ...this.#state, confidence: { ...this.#state.confidence, ...changes } });
  }

  setReportDue(isReportDue: boolean): void {
    this.#take({ ...this.#state, isReportDue });
  }

  /** Candidates are tuned and simulated from now on; what went wrong before may be tried again. */
  startRun(): void {
    this.#setRunning(true, { error: null });
  }

  /** Nothing is under way any more. */
  endRun(): void {
    this.#setRunning(false, { progress: null });
  }

  #setRunning(isRunning: boolean, changes: Partial<CandidateState>): void {
    const candidates = this.#state.candidates.map((candidate) => ({ ...candidate, ...changes }));
    const begun = isRunning ? { at: performance.now(), done: shareDone(candidates) } : null;
    this.#take({ ...this.#state, candidates, isRunning, begun });
  }

  /** Changes candidates in one telling. */
  #change(changed: (candidate: CandidateState, index: number) => CandidateState): void {
    this.#take({ ...this.#state, candidates: this.#state.candidates.map(changed) });
  }

  #withOutcome(candidate: CandidateState, outcome: CandidateOutcome): CandidateState {
    this.#found.add(this.#state.study.job, candidate.scene, outcome);
    return { ...candidate, outcome, isSought: false, progress: null, error: null };
  }

  #step(study: Study): void {
    this.#rememberGains();
    this.#history.advance(this.#withKnownGains(study));
    this.#use();
  }

  /** Of the study as it is, before it becomes another. One that sizing rules out was not tuned: another job may have it tuned yet. */
  #rememberGains(): void {
    const { study, candidates } = this.#state;
    for (const { choice, sizing } of candidates) {
      if (choice.gains === null || !sizing.passes) continue;
      const untuned = candidateScene(study.job, { ...choice, gains: null }, this.#presets);
      this.#tuned.add(untuned, study.job.values.peakSensitivity, choice.gains);
    }
  }

  #withKnownGains(study: Study): Study {
    const { job } = study;
    return {
      ...study,
      candidates: study.candidates.map((candidate) => {
        if (candidate.gains !== null) return candidate;
        const untuned = candidateScene(job, candidate, this.#presets);
        return { ...candidate, gains: this.#tuned.of(untuned, job.values.peakSensitivity) };
      }),
    };
  }

  #use(): void {
    const study = this.#history.present;
    const { candidates: before, study: was } = this.#state;
    const candidates = candidatesOf(study, this.#presets, before, was.job).map((candidate) =>
      candidate.outcome ? candidate : { ...candidate, outcome: this.#found.of(study.job, candidate.scene) },
    );
    this.#take({ ...this.#state, study, candidates });
  }

  #take(state: StudyState): void {
    const isJudged = sameResults(this.#state, state);
    const isDrawn = isJudged && rangesOf(this.#state.study) === rangesOf(state.study);
    this.#state = {
      ...state,
      verdict: isJudged ? state.verdict : NO_VERDICT,
      confidence: isDrawn ? state.confidence : NO_CONFIDENCE,
    };
    for (const subscriber of this.#subscribers) subscriber(this.#state);
  }
}

/** The candidates of a study; one that is as it was before keeps what was found of it. */
function candidatesOf(
  study: Study,
  presets: Presets,
  before: readonly CandidateState[],
  jobBefore: Job = study.job,
): CandidateState[] {
  const areSameTests = sameTests(study.job, jobBefore);
  return study.candidates.map((choice, index) => {
    const scene = candidateScene(study.job, choice, presets);
    const was = before[index];
    const kept = areSameTests && was !== undefined && sameScene(was.scene, scene) ? was : null;
    return {
      letter: candidateLetter(index),
      choice,
      title: scene.title,
      scene: kept?.scene ?? scene,
      sizing: kept && study.job === jobBefore ? kept.sizing : sizeCandidate(study.job, scene),
      outcome: kept?.outcome ?? null,
      isSought: kept?.isSought ?? false,
      progress: kept?.progress ?? null,
      error: kept?.error ?? null,
    };
  });
}

/** Whether a drive that was tuned for one job is tuned for the other as well. */
function sameTask(a: Job, b: Job, candidate: CandidateChoice, presets: Presets): boolean {
  if (a.values.peakSensitivity !== b.values.peakSensitivity) return false;
  const untuned = { ...candidate, gains: null };
  return sameScene(candidateScene(a, untuned, presets), candidateScene(b, untuned, presets));
}
