import type { VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import { STATUS_WORD, type Status } from '../../shared/words/finding.ts';
import {
  briefLength,
  FORCE,
  HOTTER,
  PRESSURE,
  printAs,
  ROUGHNESS,
  STRESS,
  SURFACE_SPEED,
} from '../../shared/words/print.ts';
import { Section } from '../../views/pages/job/section.tsx';
import { CAUTIONS, Caution, Cautions } from '../../views/parts/caution.tsx';
import { EmptyState } from '../../views/parts/emptyState.tsx';
import { EntryTable } from '../../views/parts/entryTable.tsx';
import { FindingList } from '../../views/parts/findingList.tsx';
import { Actions } from '../../views/parts/form/actions.tsx';
import { ErrorSummary } from '../../views/parts/form/errorSummary.tsx';
import { Choice, Field, TextArea } from '../../views/parts/form/fieldBox.tsx';
import { printQuantity } from '../../views/parts/form/quantity.ts';
import { Sign } from '../../views/parts/form/sign.tsx';
import { Tick } from '../../views/parts/form/tick.tsx';
import { KeyFigures } from '../../views/parts/keyFigures.tsx';
import { TitleBlock } from '../../views/parts/titleBlock.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound, tagsOf, valuesOf } from './markup.ts';
import { finding } from './samples.ts';

const EVIL = '<img src=x onerror="alert(1)">&';
const STATUSES: readonly Status[] = ['pass', 'caution', 'fail', 'not-checked'];

describe('parts escape what people typed', () => {
  const parts: Record<string, VNode> = {
    'a field': <Field label={EVIL} name="a" value={EVIL} hint={EVIL} error={EVIL} unit={EVIL} />,
    'a text area': <TextArea label="Note" name="a" value={EVIL} />,
    'a list to choose from': (
      <Choice label="Family" name="a" value={EVIL} options={[{ value: EVIL, label: EVIL }]} />
    ),
    'a finding': (
      <FindingList
        unit="mm"
        findings={[
          finding({
            title: EVIL,
            sentence: EVIL,
            source: EVIL,
            answer: {
              symbol: EVIL,
              value: 1,
              unit: 'mm',
              how: [{ formula: EVIL, numbers: EVIL, source: EVIL }],
              warnings: [{ code: 'a', text: EVIL }],
            },
          }),
        ]}
      />
    ),
    'a title block': <TitleBlock cells={[{ label: EVIL, value: EVIL }]} />,
    'an error summary': <ErrorSummary faults={[{ path: EVIL, message: EVIL }]} />,
    'key figures': <KeyFigures figures={[{ label: EVIL, value: EVIL, note: EVIL }]} />,
    'an empty state': <EmptyState title={EVIL}>{EVIL}</EmptyState>,
  };
  for (const [name, part] of Object.entries(parts)) {
    it(name, () => {
      const html = renderPart(part);
      expect(html).toContain('&lt;img');
      expect(html).not.toContain('<img');
      expect(html).not.toContain('"alert(1)"');
    });
  }
});

describe('a sign', () => {
  it.each(STATUSES)('carries its word and a shape of its own for %s', (status) => {
    const html = renderPart(<Sign status={status} />);
    expect(html).toContain(`>${STATUS_WORD[status]}</span>`);
    const shapes = STATUSES.map((other) => renderPart(<Sign status={other} />).match(/<svg.*<\/svg>/)?.[0]);
    expect(new Set(shapes).size).toBe(STATUSES.length);
    expect(html).toMatch(/<svg[^>]*aria-hidden="true"/);
  });

  it('hides its word from the eye alone, never from a reader of the page', () => {
    expect(renderPart(<Sign status="fail" />)).toContain('class="unseen"');
    expect(renderPart(<Sign status="fail" word="shown" />)).not.toContain('unseen');
  });
});

describe('a finding list', () => {
  it('puts what stops the work first and keeps the order otherwise', () => {
    const html = renderPart(
      <FindingList
        unit="mm"
        findings={[
          finding({ id: 'a', status: 'pass' }),
          finding({ id: 'b', status: 'not-checked' }),
          finding({ id: 'c', status: 'fail' }),
          finding({ id: 'd', status: 'caution' }),
          finding({ id: 'e', status: 'fail' }),
        ]}
      />,
    );
    expect(valuesOf(html, 'id')).toEqual(['finding-c', 'finding-e', 'finding-d', 'finding-b', 'finding-a']);
  });

  it('opens to the working, and only where there is one', () => {
    const answer = {
      symbol: 't',
      value: 4.529,
      unit: 'mm',
      how: [{ formula: 't = w − k', numbers: 't = 4.859 − 0.330', source: 'ISO 1' }],
      warnings: [{ code: 'x', text: 'Said once.' }],
    } as const;
    const html = renderPart(<FindingList unit="mm" findings={[finding({ answer })]} />);
    expect(html).toMatch(
      /<details><summary.*why.*<\/summary>.*t = w − k.*4\.859 − 0\.330.*ISO 1.*Said once\./s,
    );
    expect(renderPart(<FindingList unit="mm" findings={[finding({})]} />)).not.toContain('<details');
  });

  it('prints its limit in the unit of the reader', () => {
    expect(renderPart(<FindingList unit="mm" findings={[finding({})]} />)).toContain('limit 4.500 mm');
    expect(renderPart(<FindingList unit="in" findings={[finding({})]} />)).toContain('limit 0.1772 in');
    const share = finding({ value: 0.991, limit: 0.95, unit: '' });
    expect(renderPart(<FindingList unit="mm" findings={[share]} />)).toContain('limit 95.0 %');
    const count = finding({ value: 4, limit: 6, unit: '' });
    expect(renderPart(<FindingList unit="mm" findings={[count]} />)).toContain('limit 6<');
  });

  it('says when a value cannot be computed', () => {
    const answer = { symbol: 'U', value: null, unit: 'mm', how: [], warnings: [] } as const;
    expect(renderPart(<FindingList unit="mm" findings={[finding({ answer })]} />)).toContain(
      'cannot be computed',
    );
  });
});

describe('a quantity for the eye', () => {
  it.each([
    [4.5, 'mm', 'mm', '4.500 mm'],
    [25.4, 'mm', 'in', '1.0000 in'],
    [203.1234, 'g·mm', 'mm', '203.1 g·mm'],
    [0.04567, 'MPa', 'mm', '0.046 MPa'],
    [3, 'cuts', 'mm', '3 cuts'],
    [12345.6, 'N', 'mm', '12346 N'],
    [12345.6, 'N', 'in', '2775 lbf'],
    [340, 'MPa', 'mm', '340 MPa'],
    [340, 'MPa', 'in', '49.3 ksi'],
    [1.86, 'MPa', 'in', '270 psi'],
    [-1.23456, '', 'mm', '−1.235'],
  ] as const)('of %s %s for a reader of %s is "%s"', (value, unit, reader, text) => {
    expect(printQuantity(value, unit, reader)).toBe(text);
  });

  it.each([
    [286, 'mm', '286 mm'],
    [285.75, 'in', '11.25 in'],
    [0.0005, 'mm', '0.0005 mm'],
    [0.001, 'in', '0.000039 in'],
    [0.005, 'in', '0.0002 in'],
    [0.03, 'in', '0.0012 in'],
    [-0.001, 'in', '−0.000039 in'],
    [0, 'in', '0 in'],
    [1e-15, 'mm', '0 mm'],
  ] as const)('that is a size of %s mm, in %s, is "%s"', (mm, unit, text) => {
    expect(briefLength(mm, unit)).toBe(text);
  });

  // NIST SP 811, B.8: 1 psi = 6.894757 kPa; 1 K = 1.8 °F of difference. ISO 1302: Ra 1.6 µm is 63 µin (all from memory).
  it.each([
    [6.894757, PRESSURE.mm, '6.89 MPa'],
    [6.894757, PRESSURE.in, '1000 psi'],
    [44482.216, FORCE.mm, '44.5 kN'],
    [44482.216, FORCE.in, '10000 lbf'],
    [206.8427, STRESS.mm, '207 MPa'],
    [206.8427, STRESS.in, '30.0 ksi'],
    [100, SURFACE_SPEED.mm, '100 m/min'],
    [100, SURFACE_SPEED.in, '328 ft/min'],
    [1.6, ROUGHNESS.mm, '1.6 µm'],
    [1.6, ROUGHNESS.in, '63 µin'],
    [100, HOTTER.mm, '100 °C'],
    [100, HOTTER.in, '180 °F'],
  ] as const)('of %s beside lengths in %o is "%s"', (value, beside, text) => {
    expect(printAs(value, beside)).toBe(text);
  });
});

describe('a field', () => {
  it('says its unit, hint and error to whoever listens', () => {
    const html = renderPart(
      <Field
        label="Wall"
        name="stations.3.wall"
        value="4,92"
        unit="mm"
        hint="On sound metal"
        error="A point."
      />,
    );
    expectSound(html);
    expect(html).toContain('aria-invalid="true"');
    expect(valuesOf(html, 'aria-describedby')).toEqual([
      'f-stations-3-wall-unit f-stations-3-wall-hint f-stations-3-wall-error',
    ]);
    expect(html).toContain('value="4,92"');
    expect(html).toContain('inputmode="decimal"');
  });

  it('says nothing of an error there is not', () => {
    const html = renderPart(<Field label="Wall" name="w" />);
    expect(html).not.toContain('aria-invalid');
    expect(html).not.toContain('aria-describedby');
  });

  it('keeps what was chosen chosen', () => {
    const options = ['a', 'b', 'c'].map((value) => ({ value, label: value }));
    const list = renderPart(<Choice label="x" name="x" value="b" options={options} />);
    expect(tagsOf(list, 'option').filter((tag) => tag.includes('selected'))).toEqual([
      expect.stringContaining('value="b"'),
    ]);
    const radios = renderPart(<Choice label="x" name="x" value="c" options={options} as="radios" />);
    expectSound(radios);
    expect(tagsOf(radios, 'input').filter((tag) => tag.includes('checked'))).toEqual([
      expect.stringContaining('value="c"'),
    ]);
    expect(radios).toContain('<legend>x</legend>');
    expect(renderPart(<Tick label="y" name="y" checked />)).toContain('checked');
  });

  it('gets one id by its name, which the error summary leads to', () => {
    const html = renderPart(
      <form>
        <ErrorSummary
          faults={[
            { path: 'cover.rim', message: 'The rim is wrong.' },
            { path: '', message: 'The whole is wrong.' },
          ]}
        />
        <Field label="Rim" name="cover.rim" error="The rim is wrong." />
      </form>,
    );
    expectSound(html);
    expect(html).toContain('<a href="#f-cover-rim">The rim is wrong.</a>');
    expect(valuesOf(html, 'id')).toContain('f-cover-rim');
    expect(html).toContain('<li>The whole is wrong.</li>');
    expect(html).toContain('2 things to fix');
    expect(renderPart(<ErrorSummary faults={[]} />)).toBe('');
  });
});

describe('a table of boxes', () => {
  const table = (error: string | null) =>
    renderPart(
      <EntryTable
        caption="Readings"
        headLabel="Station"
        columns={[
          { key: 'wall', label: 'Wall', unit: 'mm' },
          { key: 'face', label: 'Face height', unit: 'mm' },
        ]}
        rows={[1, 2].map((n) => ({
          id: `row-${n}`,
          head: `${n}`,
          spoken: `at station ${n}`,
          cells: { wall: { name: `w.${n}`, value: '4.9', error: n === 2 ? error : null } },
        }))}
      />,
    );

  it('labels every box with its column, unit and row', () => {
    const html = table(null);
    expectSound(html);
    const text = html.replace(/<[^>]+>/g, '');
    expect(text).toContain('Wall, mm at station 1');
    expect(text).toContain('Wall, mm at station 2');
    expect(tagsOf(html, 'input')).toHaveLength(2);
  });

  it('says an error in its own cell', () => {
    const html = table('Did you mean 4.9?');
    expectSound(html);
    expect(html).toMatch(/id="f-w-2-error".*Did you mean 4\.9\?/s);
    expect(tagsOf(html, 'input').filter((tag) => tag.includes('aria-invalid'))).toEqual([
      expect.stringContaining('name="w.2"'),
    ]);
  });
});

describe('a page', () => {
  it('marks its first action as the next thing to do, and no other', () => {
    const html = renderPart(
      <Actions
        actions={[
          { label: 'Decide', id: 'decide', name: 'go', value: '1' },
          { label: 'Print', href: '/print' },
        ]}
      />,
    );
    expect(html).toMatch(/<button class="button first" type="submit" id="decide"/);
    expect(html).toMatch(/<a class="button" href="\/print"/);
  });

  it('shows each step with its state in a word and a shape of its own', () => {
    const states = ['done', 'next', 'missing', 'later'] as const;
    const html = states
      .map((state) =>
        renderPart(
          <Section id={state} number={1} title="T" state={state} summary="" open={false}>
            {null}
          </Section>,
        ),
      )
      .join('');
    for (const state of states) expect(html).toContain(`>${state}</span>`);
    expect(valuesOf(html, 'aria-current')).toEqual(['step']);
    expect(new Set(html.match(/<svg.*?<\/svg>/gs)).size).toBe(states.length);
  });

  it('shows a stroke in an empty cell of the title block', () => {
    const html = renderPart(<TitleBlock cells={[{ label: 'decided by', value: '' }]} />);
    expect(html).toContain('<dd>—</dd>');
  });

  it('shows a key figure with its unit and its sign', () => {
    const html = renderPart(
      <KeyFigures figures={[{ label: 'left', value: '4.5', unit: 'mm', status: 'pass' }]} />,
    );
    expect(html.replace(/<[^>]+>/g, '')).toContain('4.5 mm');
    expect(html).toContain(STATUS_WORD.pass);
  });

  it('shows every caution alone, and all of them together', () => {
    const all = renderPart(<Cautions />);
    for (const [kind, text] of Object.entries(CAUTIONS)) {
      const escaped = text.replaceAll("'", '&#39;');
      const found = (html: string) => html.includes(text) || html.includes(escaped);
      expect(found(renderPart(<Caution kind={kind as keyof typeof CAUTIONS} />)), kind).toBe(true);
      expect(found(all), kind).toBe(true);
    }
    expect(all).toContain('class="sign sign-caution"');
  });
});
