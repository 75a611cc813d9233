import type { Scene } from '../../shared/core/scene.ts';
import { type OperatingPoint, startingPoint } from '../../shared/protocol/analysis.ts';
import { gainSheet, type SheetRun } from '../../shared/sheet/gainSheet.ts';
import type { AnalysisClient } from '../clients/analysisClient.ts';
import { errorText } from '../clients/errorText.ts';
import type { Messages } from '../ui/messages.ts';

/**
 * Works out the gain sheet of a scene as it starts and shows it: the margins with the guide sliding, which every move meets, then
 * with it presliding. What only the sheet needs is loaded with the first one.
 */
export async function showGainSheet(
  scene: Scene,
  run: SheetRun,
  analysis: AnalysisClient,
  messages: Messages,
): Promise<void> {
  messages.say('Preparing the gain sheet.');
  try {
    const presliding = startingPoint(scene.parameters);
    const sliding: OperatingPoint = { ...presliding, friction: 'sliding' };
    const [{ openGainSheet }, moving, standing] = await Promise.all([
      import('../paper/gainSheet/openGainSheet.ts'),
      analysis.analyse(scene.parameters, sliding),
      analysis.analyse(scene.parameters, presliding),
    ]);
    const loops = [
      { point: sliding, figures: moving.figures },
      { point: presliding, figures: standing.figures },
    ];
    openGainSheet(gainSheet(scene, { loops, ...run }), moving);
  } catch (error) {
    messages.problems(
      'There is no gain sheet',
      [errorText(error)],
      'The bench is unchanged. Why the loop could not be analysed:',
    );
  }
}
