import { describe, expect, it } from 'vitest';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, JOINT, layer, withNut, withStack, withStud } from './example.ts';

const sentence = (input: StudCheckInput, id: string, unit: LengthUnit = 'mm') =>
  checkStud(input, unit).findings.find((finding) => finding.id === id)!.sentence;

/** Figures by hand from the sizes in each line; every sentence says which face it counts from. */
describe('a sentence counts from the face it names', () => {
  it('a thread that ends 0.30 mm into an 8.344 mm nut is 8.04 mm short of its far face', () => {
    const input = withNut(
      { heightMm: 8.344 },
      withStack({ layers: [layer(12.7)] }, withStud({ threadEndMm: 13, projectionMm: 16 })),
    );
    expect(sentence(input, 'protrusion')).toBe(
      'The stud’s thread ends 8.04 mm short of the nut’s far face; 1 thread past the nut is needed.',
    );
  });

  it('a stud end 1.00 mm before a 12.7 mm stack is 13.70 mm short of the engine side', () => {
    const input = withStack(
      { layers: [layer(12.7)] },
      { ...withStud({ threadEndMm: 21, projectionMm: 24 }), pullForwardMm: 25 },
    );
    expect(sentence(input, 'reach')).toBe(
      'With the converter pushed back 25.00 mm, the stud end is 13.70 mm short of the engine side: the nut can’t be started.',
    );
    expect(sentence(input, 'pilot-enters-hole')).toContain('is 1.00 mm short of the flexplate');
  });

  it('a stud end level with the face is flush, not 0.00 mm inside', () => {
    const input = { ...withStack({ layers: [layer(19)] }), pullForwardMm: 4 };
    expect(sentence(input, 'reach')).toBe(
      'With the converter pushed back 4.00 mm, the stud end is flush with the engine side: the nut can’t be started.',
    );
    expect(sentence({ ...EXAMPLE, pullForwardMm: 23 }, 'pilot-enters-hole')).toContain(
      'only touches the flexplate',
    );
    expect(sentence(withStud({ threadEndMm: 11.5 }), 'protrusion')).toContain('ends flush with');
    expect(sentence(withStack({ tipRoomMm: 23 }), 'tip-clearance')).toContain('touches the engine side');
  });

  it('nominal and likely spread never share a sentence', () => {
    // End 11.45: nominal 0.05 past the last nut thread (3.2 + 8.3 − 0.1); RSS of 0.25, 0.1, 0.2 is 0.335.
    const said = sentence(withStud({ threadEndMm: 11.45, projectionMm: 14 }), 'engagement');
    expect(said).toBe(
      'All of the nut’s thread is engaged: 8.10 mm (7.7 threads, 0.85 diameters). Likely spread of sizes (RSS): 0.29 mm short of full engagement.',
    );
  });

  it('what is missing is rounded up in the reader’s unit, so that what is asked for is enough', () => {
    const input = withStack({ layers: [layer(19.5)] }, { ...EXAMPLE, nut: null });
    expect(checkStud(input).because).toContain('Needs a stud at least 0.51 mm longer.');
    expect(checkStud(input, 'in').because).toContain('Needs a stud at least 0.020 in longer.');
  });

  it('a torque below what holds and above what the stud should get says both', () => {
    const joint = { ...JOINT, torqueNm: 22, engineTorqueNm: 700 };
    const weak = withStud({ proofMPa: 300, tensileMPa: 500 }, { ...EXAMPLE, joint });
    expect(sentence(weak, 'joint-torque')).toContain(
      '22.0 N·m is too little to hold and too much for the stud.',
    );
  });

  it('care is said once', () => {
    const { headline } = checkStud(withStud({ threadEndMm: 9.2 + 0.1, projectionMm: 17 }));
    expect(headline.match(/with care/g) ?? ['']).toHaveLength(1);
  });
});
