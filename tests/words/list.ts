import { demoCovers } from '../../data/demo/covers.ts';
import { demoCriteria, demoCriteriaNow } from '../../data/demo/criteria.ts';
import { demoFamilies } from '../../data/demo/families.ts';
import { demoGauges } from '../../data/demo/gauges.ts';
import { demoJobs } from '../../data/demo/jobs.ts';
import { demoNuts, demoWashers } from '../../data/demo/nuts.ts';
import { CRACK_NOTE } from '../../data/demo/seed.ts';
import { demoStacks } from '../../data/demo/stacks.ts';
import { demoStuds } from '../../data/demo/studs.ts';
import { PEOPLE } from '../web/lan.ts';
import { plain, SIGN, says } from './plain.ts';
import { type SourceWords, sourceWords } from './sourceWords.ts';
import { SCREEN_NAMES, type Seen } from './visit.ts';

/** Every sentence and label there is, each once. */
export interface Words {
  /** What is read on the pages, by screen, in the order it is met there. */
  readonly screens: readonly (readonly [screen: string, lines: readonly string[]])[];
  /** What the source can say and the demo shop had no reason to, by room. */
  readonly rooms: readonly (readonly [room: string, lines: readonly string[]])[];
}

/** On so many screens it belongs to the frame of all. */
const FRAME_ON = 6;

export function wordsOf(seen: readonly Seen[]): Words {
  const screens = new Map<string, Set<string>>(SCREEN_NAMES.map((name) => [name, new Set<string>()]));
  for (const { screen, text } of seen) screens.get(screen)!.add(text);
  const known = new Set<string>();
  const once = (lines: Iterable<string>) =>
    [...lines].filter((line) => {
      const key = keyOf(line);
      if (known.has(key)) return false;
      known.add(key);
      return true;
    });
  const all = [...screens.values()];
  const frame = [...new Set(all.flatMap((lines) => [...lines]))].filter(
    (line) => all.filter((lines) => lines.has(line)).length >= FRAME_ON,
  );
  const told = [...screens].map(([screen, lines]) => [screen, lines] as const);
  return {
    screens: [
      ['Every page', once(frame)] as const,
      ...told.map(([screen, lines]) => [screen, once(lines)] as const),
    ],
    rooms: roomsOf(unmet(all.flatMap((lines) => [...lines]))).map(
      ([room, lines]) => [room, once(lines)] as const,
    ),
  };
}

/** What was read, with signs for what was typed and for figures; fixed forms of one fault told once. */
export function readable(seen: readonly Seen[]): Seen[] {
  const typed = typedInDemo();
  const memo = new Map<string, string>();
  return seen.flatMap(({ screen, text }) => {
    const line = memo.get(text) ?? oneOfItsKind(plain(text, typed));
    memo.set(text, line);
    return says(line) && !isFormula(line) ? [{ screen, text: line }] : [];
  });
}

function oneOfItsKind(line: string): string {
  return line
    .replace(/"?(?:zzq\?)+"?/g, SIGN)
    .replace(/^(?:The )?[^.:"]+ (?=is # ?[^.]*; it must be )/, `The ${SIGN} `)
    .replace(/^[^.:"]+(?=: # is not a plain number)/, SIGN);
}

/** Comments of the calculations are shown with their formulas, and the source draws: neither is words. */
function isFormula(line: string): boolean {
  if (/^(src|tests|data)\/\S+$|^(url|translate|rotate)\(|^:scope|^[a-z]+(\.[\w#]+)+$|data-/.test(line))
    return true;
  return /[=√Σ∫]/.test(line) && (line.match(/\p{Ll}{3,}/gu) ?? []).length < 6;
}

/** Upper case and the name of the entry a label belongs to make no other label of it. */
function keyOf(line: string): string {
  return line
    .replace(/^(Criteria|Shop limits|Cover type|Stack|Flexplate stack|Stud|Gauge|Nut|History): /, '')
    .replace(/ optional$/, '')
    .toLowerCase();
}

/** What people of the demo shop typed: names, notes, reasons, sources. */
export function typedInDemo(): string[] {
  const found = new Set<string>();
  const walk = (value: unknown): void => {
    if (typeof value === 'string') {
      if (value.length > 5 && / /.test(value)) found.add(value.replace(/\s+/g, ' '));
    } else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk);
  };
  walk([
    CRACK_NOTE,
    demoFamilies,
    demoStuds,
    demoStacks,
    demoNuts,
    demoWashers,
    demoGauges,
    demoCriteria,
    demoCriteriaNow,
  ]);
  walk(demoCovers.map(({ about, gauge }) => [about, gauge?.name]));
  walk(
    demoJobs.map(({ customerReference, reason, studs }) => [
      `${customerReference} `.trim(),
      reason,
      studs?.note,
      studs?.before?.note,
    ]),
  );
  walk(Object.values(PEOPLE).map(({ name }) => name));
  return [...found].sort((a, b) => b.length - a.length);
}

function unmet(lines: readonly string[]): SourceWords[] {
  const met = `\n${[...new Set(lines)].join('\n').toLowerCase()}\n`;
  return sourceWords().filter(({ text }) => {
    const line = plain(text).toLowerCase();
    if (!says(line) || isFormula(line)) return false;
    if (!line.includes(SIGN)) return !met.includes(line);
    const parts = line.split(SIGN).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
    return !new RegExp(parts.join('[^\\n]*')).test(met);
  });
}

const ROOMS: readonly (readonly [RegExp, string])[] = [
  [/^shared\/words\/fields/, 'Fields of forms and lists'],
  [/^shared\/words|^src\/records\/entryNames/, 'Words for one thing everywhere'],
  [/^shared\/(quantity|measuring)|^src\/shop\/doubts/, 'What is typed, and slips'],
  [/^shared\/schemas/, 'Values sent by programs'],
  [/^src\/calc\/(cover|judge|measure|job)/, 'Checks of a cover'],
  [/^src\/calc\/(plate|heat)|^src\/shop\/bending|bending/i, 'Bending and heat'],
  [/^src\/calc\/stud|^src\/shop\/stud|^(src\/web|views\/pages)\/stud/, 'Studs'],
  [/^src\/records\/jobs|^src\/shop|^src\/web\/(job|measuring)|^views\/pages\/job/, 'Jobs'],
  [/^src\/records\/people|^(src\/web|views\/pages)\/people/, 'People'],
  [/^src\/records\/(backup|carry|database|photos)|ackups/, 'Backups, commands and the database'],
  [/catalogue|Criteria|criteria/, 'Catalog and shop limits'],
  [/^(src\/web|views\/pages)\/cover/, 'Covers'],
  [/^src\/web\/api/, 'Interface for programs'],
  [/^src\/(main|settings)/, 'Start'],
  [/^views\/browser/, 'Scripts of the pages'],
  [/^views\/drawings/, 'Drawings'],
  [/^data\/demo/, 'Typed by people of the demo shop'],
  [/^data\/examples|how/, 'How it is worked out'],
  [/./, 'Everything else'],
];

function roomsOf(words: readonly SourceWords[]): [string, string[]][] {
  const rooms = new Map<string, string[]>(ROOMS.map(([, name]) => [name, []]));
  for (const { file, text } of words)
    rooms.get(ROOMS.find(([fits]) => fits.test(file))![1])!.push(plain(text));
  return [...rooms].filter(([, lines]) => lines.length > 0);
}

/** The list as it is kept, to be read from the first line to the last. */
export function written({ screens, rooms }: Words): string {
  const part = (mark: string, [name, lines]: readonly [string, readonly string[]]) =>
    lines.length === 0 ? '' : `${mark} ${name}\n\n${lines.map((line) => `- ${line}\n`).join('')}\n`;
  return [
    '# Every word on the screen\n\n',
    'Made by `npm run words`; read it through before a change of words lands. ',
    `${SIGN} stands for figures with their units, days, and what people typed. Each thing stands once, under the first screen that shows it.\n\n`,
    ...screens.map((one) => part('##', one)),
    '## Where the demo shop gave no reason\n\n',
    'Sentences that the program has and no page of the demo shop showed, with forms filled wrong too.\n\n',
    ...rooms.map((one) => part('###', one)),
  ]
    .join('')
    .trimEnd()
    .concat('\n');
}
