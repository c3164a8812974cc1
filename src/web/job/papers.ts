import QRCode from 'qrcode';
import type { Job } from '../../../shared/words/job.ts';
import type { ShelfChange } from '../../../shared/words/shelf.ts';
import type { Frame } from '../../../views/frame.ts';
import type { Printing } from '../../../views/pages/job/paper/paperDocument.tsx';
import { SheetPage } from '../../../views/pages/job/paper/sheetPage.tsx';
import { TagPage, type TagProps } from '../../../views/pages/job/paper/tagPage.tsx';
import { ShelfTagPage } from '../../../views/pages/shelf/shelfTagPage.tsx';
import type { QrModules } from '../../../views/parts/qr.tsx';
import { renderPage } from '../../../views/render.ts';
import type { Db } from '../../records/database/database.ts';
import { holdsDemo } from '../../records/jobs/findJobs.ts';
import type { PrintSigned } from '../../records/jobs/signedPrints.ts';
import { photosOf } from '../../records/photos/photos.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { madeUpCover } from '../../shop/demoFigures.ts';
import { type JobAnswer, jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { cutOnPaper, findingsOnPaper, wallsOnPaper } from '../../shop/onPaper.ts';
import { Remembered } from '../../shop/remembered.ts';
import { coverLimitFields } from '../catalogue/entryFields.ts';
import { partsToday } from './printedParts.ts';

/** How a paper is asked for, beside the job it is of. */
export interface PaperAsked {
  readonly frame: Frame;
  /** Where tablets reach this program; null where nobody said. */
  readonly publicUrl: string | null;
  readonly asSigned?: boolean;
}

function printingOf({ frame, asSigned = false }: PaperAsked): Printing {
  return { frame, asSigned, styleHash: partsToday().styleHash };
}

/** The sheet of a job as it stands, or as it was. Reads through `db` alone. */
export async function sheetOf(
  db: Db,
  job: Job,
  asked: PaperAsked & { readonly asItWas?: number | null },
): Promise<string> {
  const { frame, publicUrl, asItWas = null, asSigned = false } = asked;
  const under = await jobUnder(db, job, frame, asItWas);
  const answer = await jobAnswer(job, { ...under, bendingAsKept: asSigned });
  const madeUp = await madeUpCover(db, job);
  const photos = await photosOf(db, job.id, job.revision);
  const decided = job.outcome === null ? null : job.sections.decision;
  const criteria = decided?.body.criteria ?? under.criteria;
  const printing = printingOf(asked);
  const beside = { printing, publicUrl, asItWas, criteria, madeUp, photos };
  return sheetsOf(answer).once(beside, () => {
    const family = job.sections.received?.body.family;
    const { told } = answer;
    const walls = wallsOnPaper(told, answer);
    const working = (decided?.body.input ?? answer.input)?.criteria?.minimumWallWorking ?? null;
    return renderPage(
      SheetPage({
        printing,
        job: told,
        asItWas,
        shape: family ? { ...family, densityKgPerM3: null } : null,
        check: answer.stands,
        walls,
        findings: findingsOnPaper(told, answer),
        cut: cutOnPaper(answer, walls.after, frame.lengthUnit),
        plan: answer.plan,
        bending: walls.after === 'none' ? null : (answer.bending?.bending ?? null),
        limits: coverLimitFields(criteria, working, { ...frame, rounded: true }),
        madeUpCover: madeUp,
        photos,
        qr: qrOf(publicUrl, job),
      }),
    );
  });
}

/**
 * Sheets drawn of an answer, which holds the whole job; what else stands on one is the key of each. They go when the
 * answer is worked out anew.
 */
const sheets = new WeakMap<JobAnswer, Remembered<string>>();
const MOST_SHEETS_OF_ONE = 4;

function sheetsOf(answer: JobAnswer): Remembered<string> {
  const known = sheets.get(answer) ?? new Remembered<string>(MOST_SHEETS_OF_ONE);
  sheets.set(answer, known);
  return known;
}

/** Tags of a job. */
export function tagOf(job: Job, asked: PaperAsked, on: TagProps['on'] = 'label'): string {
  return renderPage(TagPage({ printing: printingOf(asked), job, qr: qrOf(asked.publicUrl, job), on }));
}

/** The tag of a cover on the shelf: its code leads to its place there. */
export function shelfTagOf(job: Job, stands: ShelfChange, asked: PaperAsked): string {
  const path = `/shelf/${encodeURIComponent(job.number)}`;
  return renderPage(
    ShelfTagPage({ printing: printingOf(asked), job, stands, qr: qrTo(asked.publicUrl, path) }),
  );
}

/** Prints what a signature is kept with: in the signer's unit, or in the shop's own where nobody looks at a page. */
export function printsFor(
  publicUrl: string | null,
  frame: Frame | { readonly timeZone: string },
): PrintSigned {
  return async (trx, signed) => {
    const asked = {
      frame: 'address' in frame ? frame : await shopFrame(trx, frame.timeZone),
      publicUrl,
      asSigned: true,
    };
    return {
      html: { sheet: await sheetOf(trx, signed, asked), tag: tagOf(signed, asked) },
      parts: partsToday().parts,
    };
  };
}

/** How a paper is written that nobody’s page asked for: as the shop has it. */
export async function shopFrame(db: Db, timeZone: string): Promise<Frame> {
  const { shopName, lengthUnit, decimalSign } = (await currentCriteria(db)).body;
  const demo = await holdsDemo(db);
  return { shopName, demo, lengthUnit, decimalSign, timeZone, initials: '', address: '' };
}

/** Leads to the job under PUBLIC_URL; without one there is no address a phone could open. */
function qrOf(publicUrl: string | null, job: Job): QrModules {
  return qrTo(publicUrl, `/jobs/${encodeURIComponent(job.number)}`);
}

function qrTo(publicUrl: string | null, path: string): QrModules {
  if (publicUrl === null) return null;
  const leadsTo = new URL(path, publicUrl).href;
  const { size, data } = QRCode.create(leadsTo, { errorCorrectionLevel: 'M' }).modules;
  const dark = Array.from({ length: size }, (_, y) =>
    Array.from({ length: size }, (_, x) => data[y * size + x] === 1),
  );
  return { size, dark, leadsTo };
}
