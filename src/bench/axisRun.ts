import type { AxisStatus, Frame, TuningSession } from '../../shared/protocol/axis.ts';
import { AxisClient } from '../clients/axisClient.ts';
import { RealTimeWatch } from '../clients/realTimeWatch.ts';
import type { Messages } from '../ui/messages.ts';
import { benchOf, presentScene } from './bench.ts';
import type { BenchActions } from './benchActions.ts';
import { Replay } from './replay.ts';
import { RunRequest } from './runRequest.ts';
import type { Store } from './store.ts';
import { sameSituation, sendToAxis } from './workerSync.ts';

/** Who hears of a session that is repeated. */
export interface ReplayWatcher {
  /** A frame of the repeated run; its buffers are only lent. */
  take?(frame: Frame): void;
  /** `left`: something else was put on the bench, or the run was reset. */
  ended(how: 'complete' | 'tripped' | 'left'): void;
}

/** The run of the axis on the bench: follows what is changed there, obeys the transport, repeats recorded sessions. */
export class AxisRun {
  readonly #store: Store;
  readonly #bench: BenchActions;
  readonly #messages: Messages;
  readonly #axis: AxisClient;
  readonly #onStopped: () => void;
  readonly #request = new RunRequest();
  #status: AxisStatus | null = null;
  /** Number of the run that the last frame belonged to. */
  #number = 0;
  #replay: Replay | null = null;
  #watcher: ReplayWatcher | null = null;
  /** The store is told what the worker already knows. */
  #isFollowing = false;
  #hasStopped = false;
  #slowMotion = false;
  readonly #watch = new RealTimeWatch();
  /** Fixed steps were asked for, since the computer is too slow for the usual engine. */
  #isFast = false;

  /** `onStopped` hears that no frame will come any more until Run or Reset starts the simulation again. */
  constructor(store: Store, bench: BenchActions, messages: Messages, onStopped: () => void) {
    this.#store = store;
    this.#bench = bench;
    this.#messages = messages;
    this.#onStopped = onStopped;
    this.#axis = new AxisClient(presentScene(store.bench), (reason) => this.#reportFailure(reason));
    store.subscribe((is, was) => {
      if (this.#isFollowing) return;
      if (!sameSituation(is, was)) this.#endReplay('left');
      sendToAxis(this.#axis, is, was, this.isRunning);
    });
  }

  /** Where frames come from. */
  get frames(): Pick<AxisClient, 'onFrame' | 'take' | 'ask'> {
    return this.#axis;
  }

  /** Null before the first frame. */
  get status(): AxisStatus | null {
    return this.#status;
  }

  get isRunning(): boolean {
    return this.#status?.state === 'running';
  }

  runOrPause(): void {
    if (this.#hasStopped) this.#restart();
    const state = this.#request.toggle(this.#status?.state ?? 'paused');
    this.#axis.send(state === 'running' ? 'run' : 'pause');
  }

  /** Back to the start, and at rest there. */
  rest(): void {
    this.#axis.send('pause');
    this.reset();
  }

  /** One period of the current loop. */
  tick(): void {
    this.#axis.send('stepTick');
  }

  /** One move, then pause. */
  move(): void {
    this.#axis.send('runOneMove');
  }

  /** Back to the start of the scene as it is set now. */
  reset(): void {
    this.#endReplay('left');
    if (this.#hasStopped) this.#restart();
    else this.#axis.send('reset');
  }

  /** Simulated seconds per second. */
  setTimeScale(timeScale: number): void {
    this.#axis.send('setTimeScale', timeScale);
  }

  get slowMotion(): boolean {
    return this.#slowMotion;
  }

  /** At events. */
  toggleSlowMotion(): void {
    this.#slowMotion = !this.#slowMotion;
    this.#axis.send('setSlowMotion', this.#slowMotion);
  }

  /** A hand pulls the table towards a position, m; null lets go. */
  pull(position: number | null): void {
    this.#axis.send('hand', position);
  }

  /** @throws when the simulation has stopped */
  recording(): Promise<TuningSession> {
    return this.#axis.recording();
  }

  replay(session: TuningSession): void {
    const { scene } = session;
    this.#start(session, () => this.#bench.openScene(scene, `Replay of ${scene.title}`), {
      ended: (how) => {
        if (how === 'complete') this.#messages.note('The replay has finished.');
        if (how === 'tripped')
          this.#messages.note('The replay has finished with the trip that was recorded.');
      },
    });
    this.#messages.note('Replaying the tuning session.');
  }

  /** Repeats a session while someone watches it. */
  play(session: TuningSession, watcher: ReplayWatcher): void {
    const { scene } = session;
    this.#start(session, () => this.#store.replace(benchOf(scene), scene.title), watcher);
  }

  /** Takes in a frame. */
  take(frame: Frame): void {
    const { run, status } = frame;
    this.#status = status;
    this.#number = run;
    this.#request.answer(status.state);
    if (this.#replay?.hasBegun(run)) this.#watcher?.take?.(frame);
    else this.#holdRealTime(status);
  }

  /** A replay keeps to the engine that it was recorded with. */
  #holdRealTime({ state, isSlow, timeScale, achievedTimeScale, lostTime }: AxisStatus): void {
    if (this.#isFast || state !== 'running' || isSlow) return;
    if (!this.#watch.isMissed({ asked: timeScale, achieved: achievedTimeScale, lost: lostTime })) return;
    this.#isFast = true;
    this.#axis.send('useEngine', 'batch');
    this.#messages.note(
      'Real time could not be held: the simulation continues in fixed steps, which are faster.',
    );
  }

  /** Once everything has taken in the frame: what a replay has changed by then. */
  followReplay(): void {
    const replay = this.#replay;
    if (!this.#status || !replay?.hasBegun(this.#number)) return;
    const { tick } = this.#status;
    const changes = replay.changesUpTo(tick);
    if (changes) this.#follow(() => this.#store.change(changes, 'changes of the replayed session', 'replay'));
    const { trip } = this.#status;
    if (!trip && !replay.hasEnded(tick)) return;
    this.#endReplay(trip ? 'tripped' : 'complete');
  }

  #start(session: TuningSession, open: () => void, watcher: ReplayWatcher): void {
    this.#endReplay('left');
    this.#axis.send('replay', session);
    this.#follow(open);
    this.#replay = new Replay(session, this.#number);
    this.#watcher = watcher;
  }

  #endReplay(how: 'complete' | 'tripped' | 'left'): void {
    const watcher = this.#watcher;
    this.#replay = null;
    this.#watcher = null;
    watcher?.ended(how);
  }

  /** For changes of the store that the worker makes by itself. */
  #follow(change: () => void): void {
    this.#isFollowing = true;
    change();
    this.#isFollowing = false;
  }

  /** With the settings of the bench, at the start of the scene, paused. */
  #restart(): void {
    this.#hasStopped = false;
    this.#axis.restart(presentScene(this.#store.bench));
  }

  #reportFailure(reason: string): void {
    // One that failed before its first frame would only fail again.
    const worked = this.#status !== null;
    this.#status = null;
    this.#replay = null;
    if (worked) {
      this.#restart();
      this.#messages.problems(
        'The simulation was restarted',
        [reason],
        'It is paused at the start of the scene. The settings on the bench are kept. Why it had stopped:',
      );
      return;
    }
    this.#hasStopped = true;
    this.#onStopped();
    this.#messages.problems(
      'The simulation stopped',
      [reason],
      'The settings on the bench are kept. Why the simulation stopped:',
      { label: 'Start it again', action: () => this.#restart() },
    );
  }
}
