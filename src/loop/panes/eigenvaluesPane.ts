import { eigenvalueMarks } from '../../plot/loop/eigenvalues.ts';
import type { LoopChartData } from '../../plot/loop/loopData.ts';
import type { Mark } from '../../plot/marks.ts';
import { PlanePane } from './planePane.ts';

/** The eigenvalues of the sampled closed loop, in the unit circle while it is stable. */
export class EigenvaluesPane extends PlanePane {
  constructor(onChange: () => void) {
    super({
      title: 'Eigenvalues',
      description: 'Eigenvalues of the sampled closed loop; those inside the unit circle decay.',
      first: { re: 0, im: 0, half: 1.15 },
      halves: [0.005, 3],
      onChange,
    });
  }

  protected marks(data: LoopChartData, textSize: number): Mark[] {
    return eigenvalueMarks(this.plane, data, textSize);
  }
}
