import type { CatalogueStack, CatalogueStud } from '../catalogue.ts';
import type { JointFrom } from '../job.ts';
import type { Kit } from './kit.ts';
import type { StudCheck, StudCheckInput } from './stud.ts';

/** What a counter slip says: what was asked, and what was answered. */
export interface CounterSlip {
  readonly stack: CatalogueStack;
  readonly stud: CatalogueStud;
  readonly input: StudCheckInput;
  readonly check: StudCheck;
  readonly kit: Kit;
  /** Whether somebody measured the gap for this caller, or it is the catalog's. */
  readonly gapMeasured: boolean;
  readonly torqueFrom: JointFrom['torque'];
  /** As marked: "Grade 5", "10.9"; null where the strength is of no known class. */
  readonly studClass: string | null;
  readonly nutClass: string | null;
  /** The stud of the same thread not to take by mistake, and why. */
  readonly notThis: { readonly name: string; readonly because: string } | null;
}
