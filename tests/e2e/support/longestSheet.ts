import { SCENES } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { gainSheet } from '../../../shared/sheet/gainSheet.ts';
import { gainSheetHtml } from '../../../src/paper/gainSheet/gainSheetHtml.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';

/** The longest sheet there is: a screw drive with all filters on. */
export function longestSheet(): string {
  const scene = present(SCENES.find(({ driveType }) => driveType === 'screw'));
  const parameters = {
    ...scene.parameters,
    filter1: 'notch' as const,
    filter2: 'notch' as const,
    filter3: 'low-pass' as const,
  };
  const given = { ...scene, parameters };
  const point = startingPoint(parameters);
  const analysis = analyse(parameters, point);
  const sheet = gainSheet(given, {
    loops: [{ point, figures: analysis.figures }],
    move: at(measureRun(given, 1.2).moves, 0),
  });
  return gainSheetHtml(sheet, analysis, '1 May 2030');
}
