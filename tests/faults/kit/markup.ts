import type { Page } from './page.ts';

/** No word of the program, so that whatever carries it came from outside. */
export const MARK = 'zzq';

/** Ways out of text, of an attribute in either quotes, of what a browser reads apart, and into an address. */
export const MARKUP: readonly string[] = [
  `<${MARK} on${MARK}=1>`,
  `"><${MARK} ${MARK}=1>`,
  `'><img src=x onerror=${MARK}()>`,
  `" autofocus onfocus="${MARK}()" ${MARK}="`,
  `' autofocus onfocus='${MARK}()' ${MARK}='`,
  `</textarea></title></style></script><script>${MARK}()</script>`,
  `--><svg/onload=${MARK}()>`,
  `javascript:${MARK}()`,
  `jAvA\tscript:${MARK}()`,
  `data:text/html,<script>${MARK}()</script>`,
  `&lt;${MARK}&gt;&#60;${MARK}&#62;<${MARK}>`,
];

/** As long as initials may be. */
export const SHORT_MARKUP = `<${MARK}>`;

const ADDRESSES =
  /^(href|src|srcset|action|formaction|xlink:href|poster|data|hx-(get|post|put|patch|delete|push-url))$/;

/** Whatever of a page came into being from words that were sent; nothing when all of it stayed text. */
export function madeOfMarkup({ elements, comments }: Page): string[] {
  const faults: string[] = [];
  for (const { tag, attributes, text } of elements) {
    if (tag.includes(MARK)) faults.push(`element ${tag}`);
    if (tag === 'script' && (text.trim() !== '' || !attributes.src?.startsWith('/assets/'))) {
      faults.push(`script "${text.slice(0, 60)}"`);
    }
    if (tag === 'style' && text.includes(MARK)) faults.push('style');
    for (const [name, value] of Object.entries(attributes)) {
      if (name.includes(MARK) || /^(on|hx-on|srcdoc$|style$)/.test(name)) faults.push(`${tag} ${name}`);
      if (!ADDRESSES.test(name)) continue;
      // Browsers read past blanks and control characters here.
      const scheme = /^([a-z]+):/.exec(value.replace(/[\p{Cc}\s]/gu, '').toLowerCase())?.[1];
      const allowed = [
        undefined,
        'http',
        'https',
        'mailto',
        ...(tag === 'img' || tag === 'link' ? ['data'] : []),
      ];
      if (!allowed.includes(scheme)) faults.push(`${tag} ${name}="${value.slice(0, 60)}"`);
      if (/^\s*[/\\]{2}/.test(value)) faults.push(`${tag} ${name} leads away: "${value.slice(0, 60)}"`);
    }
  }
  if (comments.some((comment) => comment.includes(MARK))) faults.push('comment');
  return faults;
}
