import { inUnit } from '../../../shared/core/format.ts';
import type { LoopChartData } from '../../plot/loop/loopData.ts';
import { nyquistMarks } from '../../plot/loop/nyquist.ts';
import type { Mark } from '../../plot/marks.ts';
import { PlanePane } from './planePane.ts';

/** The open loop round −1, with the unit circle and the circle that it keeps clear of. */
export class NyquistPane extends PlanePane {
  constructor(onChange: () => void) {
    super({
      title: 'Nyquist',
      description: 'The open loop L, the unit circle, and the circle around −1 that L does not enter.',
      first: { re: -0.6, im: 0, half: 1.5 },
      halves: [0.05, 500],
      onChange,
    });
  }

  protected marks(data: LoopChartData, textSize: number): Mark[] {
    const modulus = inUnit(data.analysis.figures.modulusMargin.value, '', 2);
    return nyquistMarks(this.plane, data, textSize, [`modulus ${modulus}`]);
  }
}
