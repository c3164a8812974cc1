import type { Job } from '../../../../shared/words/job.ts';
import { countingPasses } from '../../../../shared/words/passes.ts';
import type { SheetProps } from './sheetProps.ts';

/** Words of a person, with what they were typed for. */
export interface TypedText {
  readonly title: string;
  readonly text: string;
}

/** Letters that people's words may have in all on the first sheet; tried by printing the demo's jobs on A4 and Letter. */
const ROOM = 200;
/** With more, each longer than this is shortened there. */
const SHORT = 50;
/** A line on a sheet of their own, and how many one has. */
const LETTERS_A_LINE = 95;
const LINES_A_SHEET = 40;

/** Everything people typed that the sheet prints whole. */
function typedTexts({ job, photos }: Pick<SheetProps, 'job' | 'photos'>): readonly TypedText[] {
  const { decision, signature, studs } = job.sections;
  const texts: TypedText[] = [
    { title: 'Reason for the decision', text: decision?.body.reason ?? '' },
    {
      title: 'Statement of the signer',
      text: job.stage === 'signed' ? (signature?.body.statement ?? '') : '',
    },
    ...countingPasses(job).map(({ note }, i) => ({ title: `Pass ${i + 1}, note`, text: note })),
    { title: 'Studs, note', text: studs?.body.note ?? '' },
    ...(studs?.body.replaced ?? []).map(({ stud, note }) => ({
      title: `Replaced stud ${stud}, note`,
      text: note ?? '',
    })),
    { title: 'Re-torqued, note', text: studs?.body.retightening?.note ?? '' },
    ...photos.map(({ note }, i) => ({ title: `Photo ${i + 1}, note`, text: note })),
  ];
  return texts.filter(({ text }) => text.trim() !== '');
}

/** A line break takes a whole line, however short the line before it. */
const lettersOf = (text: string): number =>
  text.split('\n').reduce((sum, line) => sum + Math.max(line.length, LETTERS_A_LINE / 2), 0);

/**
 * The sheet with people's words shortened where there are more than it has room for, and the sheets that have those
 * words whole: so the number of sheets that is printed is the number that comes out.
 */
export function withTextsInFull(
  props: SheetProps,
  firstSheet: number,
  lists: readonly TypedText[] = [],
): { readonly props: SheetProps; readonly inFull: readonly (readonly TypedText[])[] } {
  const texts = typedTexts(props);
  if (texts.reduce((sum, { text }) => sum + lettersOf(text), 0) <= ROOM)
    return { props, inFull: lists.length === 0 ? [] : sheetsOf(lists) };
  const short = (text: string): string => {
    if (text.length <= SHORT && !text.includes('\n')) return text;
    const start = text.replaceAll(/\s+/g, ' ').slice(0, SHORT);
    return `${start.slice(0, start.includes(' ') ? start.lastIndexOf(' ') : SHORT)} … (in full from sheet ${firstSheet})`;
  };
  return {
    props: shortened(props, short),
    inFull: sheetsOf([...texts.filter(({ text }) => short(text) !== text), ...lists]),
  };
}

function shortened(props: SheetProps, short: (text: string) => string): SheetProps {
  const { job, findings, photos } = props;
  return {
    ...props,
    job: { ...job, sections: shortSections(job.sections, short) },
    photos: photos.map((photo) => ({ ...photo, note: short(photo.note) })),
    findings: {
      ...findings,
      notOk: findings.notOk.map((one) => ({
        ...one,
        overruled: one.overruled && { ...one.overruled, why: short(one.overruled.why) },
      })),
    },
  };
}

function shortSections(sections: Job['sections'], short: (text: string) => string): Job['sections'] {
  const { decision, signature, cuts, studs } = sections;
  const noteOf = <T extends { readonly note?: string }>(one: T): T =>
    one.note === undefined ? one : { ...one, note: short(one.note) };
  return {
    ...sections,
    decision: decision && {
      ...decision,
      body: { ...decision.body, reason: short(decision.body.reason) },
    },
    signature: signature && {
      ...signature,
      body: { ...signature.body, statement: short(signature.body.statement) },
    },
    cuts: cuts && { ...cuts, body: { ...cuts.body, cuts: cuts.body.cuts.map(noteOf) } },
    studs: studs && {
      ...studs,
      body: {
        ...noteOf(studs.body),
        ...(studs.body.replaced && { replaced: studs.body.replaced.map(noteOf) }),
        ...(studs.body.retightening && { retightening: noteOf(studs.body.retightening) }),
      },
    },
  };
}

/** The texts on as many sheets as they need; one that goes on is named again. */
function sheetsOf(texts: readonly TypedText[]): readonly (readonly TypedText[])[] {
  const sheets: TypedText[][] = [[]];
  let room = LINES_A_SHEET;
  for (const { title, text } of texts) {
    let rest = linesOf(text);
    while (rest.length > 0) {
      if (room < 4) {
        sheets.push([]);
        room = LINES_A_SHEET;
      }
      const here = rest.slice(0, room - 2);
      sheets.at(-1)!.push({ title, text: here.join('\n') });
      rest = rest.slice(here.length);
      room -= here.length + 2;
    }
  }
  return sheets;
}

function linesOf(text: string): string[] {
  const line = new RegExp(`.{1,${LETTERS_A_LINE}}(?:\\s|$)|.{${LETTERS_A_LINE}}`, 'gu');
  return text.split('\n').flatMap((paragraph) => paragraph.match(line) ?? ['']);
}
