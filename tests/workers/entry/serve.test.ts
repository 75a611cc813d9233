import { afterEach, describe, expect, it, vi } from 'vitest';
import { onSignOfLife, signOfLife } from '../../../shared/core/signOfLife.ts';
import type { Heartbeat } from '../../../shared/protocol/heartbeat.ts';
import { serve } from '../../../workers/entry/serve.ts';

/** Stands in for the scope of a worker; notes what is posted to the page. */
class Scope extends EventTarget {
  readonly posted: unknown[] = [];
  postMessage(message: unknown): void {
    this.posted.push(message);
  }
  receive(data: Heartbeat): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

/** A worker with commands; `advance` lets time go by. */
function started() {
  const scope = new Scope();
  let now = 1000;
  vi.stubGlobal('self', scope);
  // What comlink offers its commands on, as long as it is told nothing else.
  vi.stubGlobal('addEventListener', scope.addEventListener.bind(scope));
  vi.spyOn(performance, 'now').mockImplementation(() => now);
  serve({});
  return {
    scope,
    advance: (ms: number) => {
      now += ms;
    },
  };
}

afterEach(() => {
  onSignOfLife(() => {});
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const ALIVE = { heartbeat: 'alive' };

describe('a worker', () => {
  it('says that it lives once it is there, and whenever it is asked', () => {
    const { scope } = started();
    expect(scope.posted).toEqual([ALIVE]);
    scope.receive({ heartbeat: 'asked' });
    expect(scope.posted).toEqual([ALIVE, ALIVE]);
  });

  it('shows while it computes that it lives, a few times a second and no more often', () => {
    const { scope, advance } = started();
    for (let k = 0; k < 10_000; k++) {
      advance(0.1);
      signOfLife();
    }
    // Of a second.
    expect(scope.posted.length).toBeGreaterThanOrEqual(4);
    expect(scope.posted.length).toBeLessThanOrEqual(8);
  });
});
