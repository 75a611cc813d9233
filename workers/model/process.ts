import type { Parameters } from '../../shared/core/parameters/table.ts';

/** Process force on the table along +x, N, at simulated time t (s) under a commanded speed (m/s). */
export function processForce(p: Parameters, t: number, commandedSpeed: number): number {
  switch (p.process) {
    case 'none':
      return 0;
    case 'constant':
      return p.processForce;
    case 'sine':
      return p.processForce * Math.sin(2 * Math.PI * p.processFrequency * t);
    case 'pulse':
      return t % (1 / p.processFrequency) < p.processTime ? p.processForce : 0;
    case 'feed':
      return commandedSpeed === 0 ? 0 : -p.processForce * Math.sign(commandedSpeed);
  }
}
