import { describe, expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { PRESETS } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { readStudy, writeStudy } from '../../../shared/files/studyFile.ts';
import { readStudyLink, writeStudyLink } from '../../../shared/files/studyLink.ts';
import type { CandidateChoice } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { checkCandidate } from '../../../shared/study/checkCandidate.ts';
import { fittingParts, PART_KINDS, PARTS } from '../../../shared/study/parts.ts';

const { job } = DEFAULT_STUDY;
const choice = (changes: Partial<CandidateChoice>): CandidateChoice => ({
  preset: 'u-channel',
  motorCount: 1,
  own: {},
  gains: null,
  ...changes,
});
const parametersOf = (changes: Partial<CandidateChoice>) =>
  candidateScene(job, choice(changes), PRESETS).parameters;

describe('parts of a machine', () => {
  it('leave a drive on the guide and with the interpolation that its preset has, unless one is chosen', () => {
    const usual = parametersOf({});
    const { interpolation1, signalPeriod, encoderResolution } = present(PRESETS['u-channel']).parameters;
    expect(usual).toMatchObject({ interpolation1, signalPeriod, encoderResolution });
    expect(usual.frictionCoefficient).toBe(defaultParameters().frictionCoefficient);
  });

  it('on an air bearing has no dry friction at all', () => {
    const { frictionCoefficient, stictionCoefficient, sealFriction, sealStiction } = parametersOf({
      parts: { guide: 'air' },
    });
    expect([frictionCoefficient, stictionCoefficient, sealFriction, sealStiction]).toEqual([0, 0, 0, 0]);
  });

  // ISO 3408-3:2006, v_300p of grades 1, 3 and 5: 6, 12 and 23 µm; v_2πp: 4, 6 and 8 µm (from memory).
  it.each([
    ['grade1', 6e-6, 4e-6],
    ['grade3', 12e-6, 6e-6],
    ['grade5', 23e-6, 8e-6],
  ] as const)('a screw of %s strays by as much as its class allows', (screw, v300, vRevolution) => {
    const p = parametersOf({ preset: 'screw', parts: { screw } });
    expect(2 * p.longError).toBeCloseTo(v300, 12);
    expect(2 * p.leadError).toBeCloseTo(vRevolution, 12);
    expect(p.encoderSide).toBe('motor');
  });

  it('a linear scale takes the lead of a screw out of the loop', () => {
    const p = parametersOf({ preset: 'screw', parts: { encoder: 'optical', screw: 'grade5' } });
    expect([p.encoderSide, p.longError, p.leadError]).toEqual(['load', 3e-6, 0]);
  });

  it('hold the ends of a screw as they are chosen: without a choice fixed and supported, never stretched', () => {
    const ends = (parts: CandidateChoice['parts']) => {
      const { screwSupport, screwPretension } = parametersOf({ preset: 'screw', ...(parts && { parts }) });
      return [screwSupport, screwPretension];
    };
    expect(ends(undefined)).toEqual(['supported', 0]);
    expect(ends({ support: 'free' })).toEqual(['free', 0]);
    expect(ends({ support: 'fixed' })).toEqual(['fixed', 0]);
    expect(ends({ support: 'stretched5', encoder: 'optical' })).toEqual(['fixed', 5]);
  });

  it('are named where they are not the usual ones', () => {
    const named = (changes: Partial<CandidateChoice>) => candidateScene(job, choice(changes), PRESETS).title;
    expect(named({})).toBe(present(PRESETS['u-channel']).title);
    expect(named({ parts: { guide: 'air', encoder: 'interferential' } })).toMatch(
      /; air bearing, interferential scale$/,
    );
    // Chosen, but the usual one: nothing to say.
    expect(named({ parts: { guide: 'ball', encoder: 'optical' } })).toBe(named({}));
  });

  it.each([
    [{ encoder: 'motor' }, /encoder.*does not fit this drive.*interferential, optical, magnetic/],
    [{ screw: 'grade3' }, /screw.*no screw/],
    [{ support: 'fixed' }, /support.*no screw/],
    [{ guide: 'ice' }, /guide.*does not fit.*ball, roller, air/],
    [{ bed: 'granite' }, /bed/],
    ['air', /object/],
  ])('%j on a linear motor is refused with what to do', (parts, text) => {
    const checked = checkCandidate({ preset: 'u-channel', parts }, job, PRESETS);
    expect('problems' in checked && JSON.stringify(checked.problems)).toMatch(text);
  });

  it('travel with file and link', () => {
    const candidates = [
      choice({ parts: { guide: 'air', encoder: 'interferential' } }),
      choice({ preset: 'screw', parts: { screw: 'grade1', support: 'stretched3' } }),
      choice({}),
    ];
    const study = { job, candidates };
    expect(readStudy(writeStudy(study), PRESETS)).toEqual({ study });
    expect(readStudyLink(writeStudyLink(study), PRESETS)).toEqual({ study });
  });

  it.each(Object.keys(PRESETS))('every part that fits %s makes a legal candidate', (preset) => {
    const lead = present(PRESETS[preset]).parameters.lead ?? 0;
    for (const kind of PART_KINDS)
      for (const id of fittingParts(kind, { lead })) {
        expect(Object.keys(PARTS[kind])).toContain(id);
        const checked = checkCandidate({ preset, parts: { [kind]: id } }, job, PRESETS);
        expect('candidate' in checked, `${kind} ${id}`).toBe(true);
      }
  });
});
