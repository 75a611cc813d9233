import { DRAG_REVERSAL, ironDrag, nutDrag } from '../../shared/axis/drag.ts';
import { GRAVITY } from '../../shared/axis/gravity.ts';
import { breakawayForce, slidingFriction } from '../../shared/axis/guide.ts';
import {
  loadSideMass,
  motorConstants,
  motorSideMass,
  translatingMotorMass,
} from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Cogging } from './cogging.ts';
import { EndStops } from './endStops.ts';
import { Friction } from './friction.ts';
import { Link } from './link.ts';
import {
  CURRENTS,
  E_COPPER,
  E_GUIDE,
  E_IN,
  E_IRON,
  E_NUT,
  E_OTHER,
  E_OUT,
  stateCount,
  type Temperatures,
  V1,
  V2,
  X1,
  X2,
  Z,
} from './state.ts';
import { Windings } from './windings.ts';

/*
 * The right-hand side, assembled from one file per physical idea. Forces in N, positive along +x, on the motor side (1) and table (2):
 *
 *   F1 = F_em − F_cog − F_iron − F_nut − F_link − m1t g sinθ                             m1 v1' = F1 − m1t ab
 *   F2 = F_link' − F_guide − m2 g sinθ + F_cb + F_process + F_hand + F_stop              m2 v2' = F2 − m2 ab
 *   (m_b + m1t m1r/m1) ab = F_hand − (m1t + m2) g sinθ − (m1t/m1) F1 − F2 − k_b xb − c_b vb       0 with a fixed base
 *
 * m1 = m1t + m1r: what travels with the motor, and the rotation of a screw, which has inertia but neither weight nor thrust on the base. Positions and speeds of motor and table are relative to the base. Energies are integrated beside them for the audit.
 */
export class Plant {
  readonly size: number;
  readonly motors: number;
  readonly base: boolean;
  readonly windings: Windings;
  readonly cogging = new Cogging();
  readonly friction = new Friction();
  readonly link = new Link();
  readonly endStops = new EndStops();

  /** Inputs, held between controller ticks. */
  voltageD = 0;
  voltageQ = 0;
  processForce = 0;
  handHolds = false;
  handPosition = 0;

  private readonly baseAt: number;
  private m1 = 1;
  private m1t = 1;
  private m2 = 1;
  private mb = 1;
  private kb = 0;
  private cb = 0;
  private weight1 = 0;
  private weight2 = 0;
  private counterbalance = 0;
  private eddy = 0;
  private hysteresis = 0;
  private nutDrag = 0;
  private nutViscous = 0;
  private handStiffness = 0;
  private handDamping = 0;

  constructor(motors: number, base: boolean) {
    this.motors = motors;
    this.base = base;
    this.size = stateCount(motors, base);
    this.windings = new Windings(motors);
    this.baseAt = CURRENTS + 2 * motors;
  }

  /** Takes parameters and temperatures; everything the right-hand side needs is worked out here, once. */
  configure(p: Parameters, t: Temperatures): void {
    const motor = motorConstants(p);
    this.m1 = motorSideMass(p);
    this.m1t = translatingMotorMass(p);
    this.m2 = loadSideMass(p);
    this.mb = p.baseMass;
    const omegaB = 2 * Math.PI * p.baseFrequency;
    this.kb = p.baseMass * omegaB ** 2;
    this.cb = 2 * p.baseDamping * p.baseMass * omegaB;
    const gravity = GRAVITY * Math.sin(p.inclination);
    this.weight1 = this.m1t * gravity;
    this.weight2 = this.m2 * gravity;
    this.counterbalance = p.counterbalance;
    const [iron, nut] = [ironDrag(p), nutDrag(p)];
    this.eddy = iron.viscous;
    this.hysteresis = iron.dry;
    this.nutDrag = nut.dry;
    this.nutViscous = nut.viscous;
    this.handStiffness = p.handStiffness;
    this.handDamping = p.handDamping;

    this.windings.configure(p, motor);
    this.cogging.configure(p);
    this.link.configure(p);
    this.endStops.configure(p);
    this.friction.configure({
      coulomb: slidingFriction(p),
      breakaway: breakawayForce(p),
      stribeckSpeed: p.stribeckSpeed,
      bristleStiffness: p.bristleStiffness,
      bristleDamping: p.bristleDamping,
      dampingFadeSpeed: p.dampingFadeSpeed,
      viscous: p.viscous,
    });
    this.warm(p, t);
  }

  /** Takes temperatures alone, as they move while it runs. */
  warm(p: Parameters, t: Temperatures): void {
    this.windings.warm(p, t);
    this.link.warm(p, t.screw);
  }

  /** At rest at position x: no currents, bristles relaxed, base where its mounts carry the weight. */
  initialState(x: number): number[] {
    const y = new Array<number>(this.size).fill(0);
    y[X1] = x;
    y[X2] = x;
    if (this.base) y[this.baseAt] = -(this.weight1 + this.weight2) / this.kb;
    return y;
  }

  /** dy/dt, written in place. */
  readonly derivative = (_time: number, y: number[], dy: number[]): void => {
    const x1 = y[X1]!;
    const v1 = y[V1]!;
    const x2 = y[X2]!;
    const v2 = y[V2]!;
    const z = y[Z]!;
    const xb = this.base ? y[this.baseAt]! : 0;
    const vb = this.base ? y[this.baseAt + 1]! : 0;

    this.windings.derivative(x1, v1, this.voltageD, this.voltageQ, y, dy);
    this.link.evaluate(x1, v1, x2, v2);
    this.endStops.evaluate(x2, v2);
    this.friction.evaluate(v2, z);
    const guide = this.friction.force;
    const reversal = Math.tanh(v1 / DRAG_REVERSAL);
    const iron = this.eddy * v1 + this.hysteresis * reversal;
    const nut = this.nutDrag * reversal + this.nutViscous * v1;
    const hand = this.handHolds ? this.handForce(x2 + xb, v2 + vb) : 0;

    const onMotor =
      this.windings.force - this.cogging.force(x1) - iron - nut + this.link.onMotor - this.weight1;
    const onTable =
      this.link.onTable -
      guide +
      this.counterbalance +
      this.processForce +
      this.endStops.force +
      hand -
      this.weight2;

    let ab = 0;
    if (this.base) {
      const travelling = this.m1t / this.m1;
      const outside = hand - this.weight1 - this.weight2 - this.kb * xb - this.cb * vb;
      ab = (outside - travelling * onMotor - onTable) / (this.mb + travelling * (this.m1 - this.m1t));
      dy[this.baseAt] = vb;
      dy[this.baseAt + 1] = ab;
    }
    dy[X1] = v1;
    dy[V1] = (onMotor - this.m1t * ab) / this.m1;
    dy[X2] = v2;
    dy[V2] = onTable / this.m2 - ab;
    dy[Z] = this.friction.bristleSpeed;

    dy[E_IN] = this.windings.inputPower;
    dy[E_COPPER] = this.windings.copperPower;
    dy[E_IRON] = iron * v1;
    dy[E_NUT] = nut * v1;
    dy[E_GUIDE] = guide * v2;
    dy[E_OTHER] = this.link.loss + this.endStops.loss + this.cb * vb * vb;
    dy[E_OUT] = -this.processForce * v2 - hand * (v2 + vb);
  };

  /** Energy stored in coils, motion, link, detents, height, mounts and buffers, J. */
  storedEnergy(y: readonly number[]): number {
    const x1 = y[X1]!;
    const x2 = y[X2]!;
    const xb = this.base ? y[this.baseAt]! : 0;
    const vb = this.base ? y[this.baseAt + 1]! : 0;
    return (
      this.windings.energy(y) +
      0.5 * this.m1t * (y[V1]! + vb) ** 2 +
      0.5 * (this.m1 - this.m1t) * y[V1]! ** 2 +
      0.5 * this.m2 * (y[V2]! + vb) ** 2 +
      this.link.energy(x1, x2) +
      this.cogging.energy(x1) +
      this.endStops.energy(x2) +
      this.weight1 * (x1 + xb) +
      this.weight2 * (x2 + xb) -
      this.counterbalance * x2 +
      0.5 * this.mb * vb * vb +
      0.5 * this.kb * xb * xb
    );
  }

  /** Spring force of the hand on the table at absolute position x and speed v, N; 0 when nothing is held. */
  handForce(x: number, v: number): number {
    return this.handHolds ? this.handStiffness * (this.handPosition - x) - this.handDamping * v : 0;
  }

  basePosition(y: readonly number[]): number {
    return this.base ? y[this.baseAt]! : 0;
  }

  baseSpeed(y: readonly number[]): number {
    return this.base ? y[this.baseAt + 1]! : 0;
  }

  /** Drag of iron and nut at motor speed v1, N, for display. */
  drag(v1: number): number {
    return (
      (this.eddy + this.nutViscous) * v1 + (this.hysteresis + this.nutDrag) * Math.tanh(v1 / DRAG_REVERSAL)
    );
  }
}
