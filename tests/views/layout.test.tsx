import { describe, expect, it } from 'vitest';
import { Layout, type LayoutProps } from '../../views/layout.tsx';
import { renderPage } from '../../views/render.ts';
import { expectSound, tagsOf, valuesOf } from './markup.ts';

function page(changes: Partial<LayoutProps> = {}): string {
  return renderPage(
    <Layout title="A cover" shopName="Shop & Sons" demo={false} lengthUnit="mm" timeZone="UTC" {...changes}>
      <p>work</p>
    </Layout>,
  );
}

describe('the layout', () => {
  it('is a whole document that a strict content policy lets through', () => {
    const html = page({ demo: true, address: '/cover?a=1&b=2', titleBlock: [{ label: 'job', value: '7' }] });
    expect(html.startsWith('<!doctype html>\n<html lang="en">')).toBe(true);
    expectSound(html);
    for (const tag of tagsOf(html, 'script'))
      expect(tag).toMatch(/ src="\/assets\/(modules\/views\/browser\/)?[a-z]+\.js"/);
    for (const url of [...valuesOf(html, 'src'), ...valuesOf(html, 'href')]) {
      expect(url).toMatch(/^(\/(?!\/)|#)/);
    }
  });

  it('tells htmx to show refusals and stale edits, and to evaluate nothing', () => {
    const meta = tagsOf(page(), 'meta').find((tag) => tag.includes('htmx-config')) ?? '';
    const config = JSON.parse((valuesOf(meta, 'content')[0] ?? '').replaceAll('&quot;', '"'));
    const first = (code: string) =>
      config.responseHandling.find((rule: { code: string }) => new RegExp(rule.code).test(code));
    expect(first('422')).toMatchObject({ swap: true });
    expect(first('409')).toMatchObject({ swap: true });
    expect(first('200')).toMatchObject({ swap: true });
    expect(first('204')).toMatchObject({ swap: false });
    expect(first('500')).toMatchObject({ swap: false });
    expect(config).toMatchObject({ allowEval: false, includeIndicatorStyles: false });
  });

  it('says where one is, and leads past the head', () => {
    const here = tagsOf(page({ here: 'studs' }), 'a').filter((tag) => tag.includes('aria-current'));
    expect(here).toEqual([expect.stringContaining('href="/stud"')]);
    expect(page()).toMatch(/<a class="skip" href="#main">/);
    expect(valuesOf(page(), 'id')).toContain('main');
  });

  it('says where made-up data is shown, and only there', () => {
    expect(page({ demo: true })).toContain('Demo: made-up data');
    expect(page({ demo: false })).not.toContain('made-up');
  });

  it('offers the other unit only where there is a way back', () => {
    expect(page()).not.toContain('<form');
    const html = page({ address: '/cover?x=1', lengthUnit: 'in' });
    expect(html).toMatch(/<button[^>]*name="unit" value="mm"/);
    expect(html).toContain('name="back" value="/cover?x=1"');
  });

  it('escapes the title and the shop', () => {
    const html = page({ title: '</title><script>', shopName: '<b>' });
    expect(html).toContain('<title>&lt;/title');
    expect(html).not.toContain('<span class="shop"><b>');
  });
});
