import { describe, expect, it } from 'vitest';
import { at } from '../../../../shared/core/at.ts';
import { problemText } from '../../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../../shared/core/sentence.ts';
import { mapResponse, suggestResponse } from '../../../../src/tuning/response/responseFile.ts';
import { readTraceTable, type TraceTable } from '../../../../src/tuning/trace/traceTable.ts';

function tableOf(text: string): TraceTable {
  const table = readTraceTable(text);
  if ('problems' in table) throw new Error(JSON.stringify(table.problems));
  return table;
}

/** 2 at 45° and 0.5 at −90°, the second line first. */
const POINTS = [
  { f: 20, dB: -6.0206, size: 0.5, degrees: -90, radians: -Math.PI / 2, re: 0, im: -0.5 },
  { f: 10, dB: 6.0206, size: 2, degrees: 45, radians: Math.PI / 4, re: Math.SQRT2, im: Math.SQRT2 },
  { f: 30, dB: -20, size: 0.1, degrees: -180, radians: -Math.PI, re: -0.1, im: 0 },
];

describe('a frequency response is read', () => {
  it.each([
    ['Frequency [Hz],L [dB],Phase [deg]', (p: (typeof POINTS)[number]) => [p.f, p.dB, p.degrees]],
    ['Frequenz [Hz],Betrag,Winkel [Grad]', (p) => [p.f, p.size, p.degrees]],
    ['f,magnitude,phase rad', (p) => [p.f, p.size, p.radians]],
    ['Hz,Re,Im', (p) => [p.f, p.re, p.im]],
    ['phase [deg],gain dB,freq', (p) => [p.degrees, p.dB, p.f]],
  ] as [string, (p: (typeof POINTS)[number]) => number[]][])('with the columns %s', (head, cells) => {
    const table = tableOf([head, ...POINTS.map((point) => cells(point).join(','))].join('\n'));
    const response = mapResponse(table, suggestResponse(table));
    if ('problems' in response) throw new Error(JSON.stringify(response.problems));
    expect([...response.frequency]).toEqual([10, 20, 30]);
    expect(at(response.re, 0)).toBeCloseTo(Math.SQRT2, 4);
    expect(at(response.im, 0)).toBeCloseTo(Math.SQRT2, 4);
    expect(at(response.re, 1)).toBeCloseTo(0, 4);
    expect(at(response.im, 1)).toBeCloseTo(-0.5, 4);
    expect(at(response.re, 2)).toBeCloseTo(-0.1, 4);
  });

  it.each([
    ['f,S [dB],phase', 'sensitivity'],
    ['f,plant magnitude,phase', 'plant'],
    ['f,L [dB],phase', 'open loop'],
  ])('as what its titles say it is: %s', (head, kind) => {
    const title = head.replace('S [dB]', 'Sensitivity [dB]');
    expect(suggestResponse(tableOf(`${title}\n1,2,3\n2,3,4\n3,4,5`)).kind).toBe(kind);
  });

  it('and refused with two columns', () => {
    const table = tableOf('f,dB\n1,2\n2,3\n3,4');
    const response = mapResponse(table, { ...suggestResponse(table), second: 2 });
    expect('problems' in response && problemText(at(response.problems, 0), AS_WRITTEN)).toMatch(
      /needs three columns/,
    );
  });
});
