import './fieldPane.css';
import { fitFactor } from '../../../shared/axis/field.ts';
import { coilForces, sheetPerAmp } from '../../../shared/axis/flux/coilForces.ts';
import { fluxDensity, ORDERS } from '../../../shared/axis/flux/harmonics.ts';
import { type MotorFlux, motorFlux } from '../../../shared/axis/flux/motorFlux.ts';
import { attractionForce } from '../../../shared/axis/guide.ts';
import { motorSize } from '../../../shared/axis/motorSize.ts';
import { magnetFactor } from '../../../shared/axis/temperature.ts';
import { at, valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { fixed, ranged } from '../../../shared/core/format.ts';
import { PARAMETERS, type ParameterChanges, type Parameters } from '../../../shared/core/parameters/table.ts';
import type { DriveType } from '../../../shared/core/scene.ts';
import { fitToScreen } from '../../plot/canvas/canvas.ts';
import { element, setText } from '../../ui/dom.ts';
import { Slider } from '../../ui/fields/slider.ts';
import { PHASES } from '../build/electrics.ts';
import { SteppedRange } from '../build/ranging.ts';
import { FluxLines } from './fluxLines.ts';
import { type Section, sectionOf } from './section.ts';
import { drawSection, pictureScale, type SectionView } from './sectionPicture.ts';

/** The numbers change this often, s. */
const NUMBERS = 0.15;
/** Lines that cross from pole to pole at the face of the winding, at the nominal gap. */
const LINES = 10;
/** Pole pitches in the picture, at least: a group of three coils of a row. */
const VIEW = 4.4;
/** Ranges of the sliders, m. */
const GAP = { min: 0.5e-3, max: 2.5e-3 };
const ECCENTRICITY = { min: -1e-3, max: 1e-3 };

/** Sets parameters if they are legal; returns what is wrong, or null. */
type Change = (changes: ParameterChanges, text: string, gesture: string) => string | null;

interface Picture {
  readonly flux: MotorFlux;
  readonly section: Section;
  readonly lines: FluxLines;
  readonly phases: readonly string[];
  readonly scale: number;
  readonly metres: number;
}

/** The motor cut open along its axis: flux lines, phase currents, the force of each coil, and what gap and eccentricity do to them. */
export class FieldPane {
  readonly element: HTMLElement;
  readonly #canvas = element('canvas', { role: 'img' });
  readonly #side: HTMLElement;
  readonly #numbers = element('dl');
  readonly #note = element('p', { class: 'field-note' });
  readonly #gap: LabelledSlider;
  readonly #eccentricity: LabelledSlider;
  readonly #force = new SteppedRange({ min: 0.1, max: 1e5, calm: 0.6, hold: 2 });
  readonly #current = new SteppedRange({ min: 0.1, max: 5000, calm: 0.6, hold: 2 });
  readonly #own = new SteppedRange({ min: 1e-3, max: 10, calm: 0.6, hold: 2 });
  #picture: Picture | null = null;
  #configured = '';
  #parameters: Parameters | null = null;
  #drawn = Number.NaN;
  #age = NUMBERS;
  #last = performance.now();
  #stale = true;

  constructor(change: Change) {
    this.#gap = labelledSlider('Air gap', 'airGap', GAP, change);
    this.#eccentricity = labelledSlider('Eccentricity', 'coilOffset', ECCENTRICITY, change);
    this.#side = element(
      'div',
      { class: 'field-side' },
      this.#gap.element,
      this.#eccentricity.element,
      this.#numbers,
    );
    this.element = element(
      'figure',
      { class: 'field-pane', 'aria-label': 'Inside the motor', hidden: true },
      this.#canvas,
      this.#side,
      this.#note,
    );
    new ResizeObserver(() => this.restyle()).observe(this.#canvas);
  }

  show(on: boolean): void {
    this.element.hidden = !on;
    this.#configured = '';
    if (!on) this.#giveRoom(false);
    this.restyle();
  }

  /** After a change of size, theme or text size. */
  restyle(): void {
    this.#stale = true;
  }

  draw(now: Float64Array, driveType: DriveType, p: Parameters): void {
    if (this.element.hidden) return;
    const time = performance.now();
    const elapsed = Math.min((time - this.#last) / 1000, 0.25);
    this.#last = time;
    this.#configure(driveType, p);
    const picture = this.#picture;
    if (!picture) return;
    this.#age += elapsed;
    const moment = valueAt(now, C.time);
    if (!this.#stale && moment === this.#drawn && this.#age < NUMBERS) return;
    this.#drawn = moment;
    this.#stale = false;
    const { flux, section } = picture;
    const state = {
      fieldCurrent: valueAt(now, C.fieldCurrent),
      forceCurrent: valueAt(now, C.forceCurrent),
      position: valueAt(now, C.motorPosition),
      carrier: valueAt(now, C.carrierTemperature),
    };
    const motors = Array.from({ length: p.motorCount }, (_, j) =>
      coilForces(p, j, section.coils, section.coilPitch, state),
    );
    const [coils = []] = motors;
    const perAmp = sheetPerAmp(p, state, flux.fundamental, flux.area) / p.motorCount;
    const [force, across] = [perAmp * state.forceCurrent, perAmp * state.fieldCurrent];
    const k = Math.PI / flux.polePitch;
    const { middle } = flux.winding;
    const own = (k * flux.sheetPotential(middle)) / (section.shaft ? middle : 1);
    const amplitude = own * Math.hypot(force, across);
    const full = this.#own.follow(amplitude, elapsed);
    const left =
      state.position + ((section.coils - 1) / 2) * section.coilPitch - picture.metres / 2 - flux.shift;
    const fullForce = this.#force.follow(Math.max(...coils.map((coil) => Math.abs(coil.force))), elapsed);
    const size = Math.hypot(state.fieldCurrent, state.forceCurrent) / p.motorCount;
    this.#paint(picture, {
      state: { left, force, across, magnet: magnetFactor(p, state.carrier) },
      coils,
      fullForce,
      fullCurrent: this.#current.follow(size, elapsed),
      fullWave: full,
      wave: (x) => {
        const phase = k * (left + x);
        return (own * (across * Math.cos(phase) - force * Math.sin(phase))) / full;
      },
    });
    if (this.#age < NUMBERS) return;
    this.#age = 0;
    const sum = motors.flat().reduce((all, coil) => all + coil.force, 0);
    this.#write(picture, p, magnetFactor(p, state.carrier), amplitude, sum, valueAt(now, C.motorForce));
  }

  #giveRoom(on: boolean): void {
    this.element.parentElement?.classList.toggle('with-field', on);
  }

  #configure(driveType: DriveType, p: Parameters): void {
    const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    const { clientWidth, clientHeight } = this.#canvas;
    const configured = `${driveType} ${clientWidth} ${clientHeight} ${rem} ${devicePixelRatio}`;
    if (configured === this.#configured && p === this.#parameters) return;
    this.#configured = configured;
    this.#parameters = p;
    this.#stale = true;
    this.#gap.show(p.airGap);
    this.#eccentricity.show(p.coilOffset);
    const flux = motorFlux(driveType, p);
    const size = motorSize(driveType, p);
    const section = flux && sectionOf(size, flux, p);
    this.#note.hidden = section !== null;
    this.#giveRoom(section !== null);
    this.#canvas.hidden = this.#side.hidden = section === null;
    setText(this.#note, 'The field is computed for linear motors, not for the rotary motor of a screw.');
    if (!flux || !section || clientWidth === 0 || clientHeight === 0) {
      this.#picture = null;
      return;
    }
    const { scale, metres } = pictureScale(section, clientWidth, clientHeight, rem, VIEW * flux.polePitch);
    const tall = (section.field.high - section.field.low) * scale;
    const grid = [Math.min(Math.ceil(clientWidth / 5), 240), Math.min(Math.max(Math.ceil(tall / 5), 12), 90)];
    this.#picture = {
      flux,
      section,
      scale,
      metres,
      phases: Array.from({ length: section.coils }, (_, c) => at(PHASES, c % PHASES.length)),
      lines: new FluxLines(
        flux,
        section.field,
        metres,
        fluxStep(driveType, p),
        grid as [number, number],
        section.shaft !== null,
      ),
    };
    this.#canvas.setAttribute(
      'aria-label',
      'Section through the motor: magnets with their poles, flux lines, coils with their phases and currents, ' +
        'the force of each coil above, the field of the currents below',
    );
  }

  #paint(picture: Picture, shown: Omit<SectionView, keyof Picture>): void {
    const { clientWidth, clientHeight } = this.#canvas;
    const pen = this.#canvas.getContext('2d') as CanvasRenderingContext2D;
    fitToScreen(pen, clientWidth, clientHeight);
    const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    drawSection(pen, clientWidth, clientHeight, rem, picture.scale, { ...picture, ...shown });
  }

  #write(
    { flux, section }: Picture,
    p: Parameters,
    magnet: number,
    own: number,
    sum: number,
    gauge: number,
  ): void {
    const { from, to, middle } = flux.winding;
    const peak = (y: number) => magnet * Math.abs(fluxDensity(flux.magnets, flux.polePitch, 0, y).across);
    const e = Math.abs(p.coilOffset);
    const rows: [string, string][] = [['Peak flux density', fixed(peak(middle), 'T', 2)]];
    const isFlat = section.shaft === null && from > 0;
    if (!isFlat) {
      const [near, far] = section.shaft ? [middle - e, middle + e] : [to + e, e - to];
      rows.push(['Near, far side', `${peak(near).toFixed(2)}, ${fixed(peak(far), 'T', 2)}`]);
    }
    rows.push(
      ['Flux, of nominal', fixed(fitFactor(p, flux.polePitch), '%', 1)],
      ['Field of currents', fixed(own, 'mT', 1)],
    );
    if (isFlat && e > 0)
      rows.push([
        'Gap at its edges',
        `${(1e3 * (p.airGap - e)).toFixed(2)}, ${fixed(p.airGap + e, 'mm', 2)}`,
      ]);
    if (isFlat) rows.push(['Attraction', ranged(attractionForce(p), 'N')]);
    rows.push([p.motorCount > 1 ? `Coils, ${p.motorCount} motors` : 'All coils', ranged(sum, 'N')]);
    rows.push(['Motor force', ranged(gauge, 'N')]);
    if (this.#numbers.childElementCount !== 2 * rows.length)
      this.#numbers.replaceChildren(...rows.flatMap(() => [element('dt'), element('dd')]));
    rows.flat().forEach((text, i) => {
      setText(this.#numbers.children[i] as Element, text);
    });
  }
}

/** Flux between two lines, so many of which cross at the winding’s face at the nominal gap. */
function fluxStep(driveType: DriveType, p: Parameters): number {
  const nominal = motorFlux(driveType, { ...p, airGap: p.nominalGap, coilOffset: 0 }) as MotorFlux;
  const crest = ORDERS.reduce(
    (sum, n) => sum + nominal.magnets(n, nominal.winding.from).potential * Math.sin((n * Math.PI) / 2),
    0,
  );
  return (2 * Math.abs(crest)) / LINES;
}

interface LabelledSlider {
  readonly element: HTMLElement;
  show(value: number): void;
}

function labelledSlider(
  label: string,
  name: 'airGap' | 'coilOffset',
  range: { readonly min: number; readonly max: number },
  change: Change,
): LabelledSlider {
  const output = element('output', { 'aria-live': 'off' });
  const text = (value: number) => fixed(value, 'mm', 2);
  const slider = new Slider(
    { ...PARAMETERS[name], ...range, scale: 'linear' },
    `${label} inside the motor`,
    (value, gesture) => {
      change({ [name]: value }, `${label.toLowerCase()} ${text(value)}`, `field ${name} ${gesture}`);
    },
  );
  return {
    element: element('label', {}, element('span', {}, label), slider.element, output),
    show(value) {
      setText(output, text(value));
      slider.show(value);
    },
  };
}
