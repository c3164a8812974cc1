import { expect, it } from 'vitest';
import { boxWidth } from '../../shared/words/fields/boxWidth.ts';
import { FAMILY } from '../../shared/words/fields/family.ts';
import { RECEIVED } from '../../shared/words/fields/job.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { BodyFields } from '../../views/parts/form/bodyFields.tsx';
import { Questions } from '../../views/parts/form/questionAt.tsx';
import { renderPart } from '../../views/render.ts';
import { tagsOf } from './markup.ts';

function folds(
  fields: Record<string, string>,
  { kept, faults = [] }: { kept?: Record<string, string>; faults?: readonly Fault[] } = {},
) {
  const writing = { lengthUnit: 'in', decimalSign: 'point' } as const;
  const html = renderPart(
    <BodyFields of={FAMILY} fields={fields} kept={kept} faults={faults} writing={writing} />,
  );
  const open = tagsOf(html, 'details', 'folded-boxes').filter((tag) => / open\b/.test(tag));
  return { html, open: open.map((tag) => /id="f-fold-(\w+)/.exec(tag)?.[1]) };
}

it('what few need is folded, below what stands open, with the sentence that says when it is needed', () => {
  const { html, open } = folds({});
  expect(open).toEqual([]);
  expect(tagsOf(html, 'details', 'folded-boxes')).toHaveLength(3);
  expect(html.indexOf('name="makerMinimum"')).toBeLessThan(html.indexOf('fold-sideWallThickness'));
  expect(html).toContain('Needed for advice on bending and heat');
});

it('a fold stands open where something was typed that is not kept, refused, or asked about', () => {
  expect(folds({ seal: '2.5' }).open).toEqual(['sideWallThickness']);
  expect(folds({ seal: '2.5' }, { kept: { seal: '2.5' } }).open).toEqual([]);
  expect(folds({ seal: '' }, { kept: { seal: '2.5' } }).open).toEqual(['sideWallThickness']);
  const fault = (path: string) => ({ faults: [{ path, message: 'Look again.' }] });
  expect(folds({}, fault('ringInner')).open).toEqual(['ring']);
  expect(folds({}, fault('ok.lim.leastEndPlayMm')).open).toEqual(['lim.leastPadThicknessMm'.split('.')[0]]);
  expect(folds({}, fault('nominal')).open).toEqual([]);
});

it('says how many of its boxes are entered', () => {
  expect(folds({ seal: '2.5', hub: '1.875' }).html).toContain('2 of 5 entered');
});

it('a box is as wide as what goes in', () => {
  expect(boxWidth(FAMILY.studCount)).toBe('count');
  expect(boxWidth(FAMILY.nominalWallMm)).toBe('figure');
  expect(boxWidth(FAMILY.shopMinimumWallOn)).toBe('day');
  expect(boxWidth(FAMILY.name)).toBe('words');
  expect(boxWidth(FAMILY.makerMinimumWallSource)).toBe('full');
});

it('a fold tells what is kept in it while it is folded, and stands open where one of its boxes is asked about', () => {
  const writing = { lengthUnit: 'in', decimalSign: 'point' } as const;
  const received = (fields: Record<string, string>, asked: string | null = null) =>
    renderPart(
      <Questions
        doubts={asked === null ? [] : [{ name: asked, typed: '1', says: 'Right as typed' }]}
        fields={fields}
      >
        <BodyFields of={RECEIVED} fields={fields} kept={kept} faults={[]} writing={writing} />
      </Questions>,
    );
  const kept = { comebackOf: '1003', note: 'Rust at stud 2' };
  expect(received(kept)).toContain(
    '<span class="fold-told">Comeback of job: 1003; Note: Rust at stud 2</span>',
  );
  expect(received({ ...kept, note: '' })).not.toContain('fold-told');
  expect(tagsOf(received(kept), 'details', 'folded-boxes')[0]).not.toMatch(/ open\b/);
  expect(tagsOf(received(kept, 'note'), 'details', 'folded-boxes')[0]).toMatch(/ open\b/);
});
