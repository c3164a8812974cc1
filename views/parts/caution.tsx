import { Sign } from './form/sign.tsx';

export type CautionKind = 'general' | 'lathe' | 'weld' | 'crack' | 'torque' | 'competition';

export const CAUTIONS: Readonly<Record<CautionKind, string>> = {
  general:
    'Rotating parts under pressure can injure. Local codes and licensed practice come before anything this program says.',
  lathe: 'Lathe work is for trained people, with guarding and eye protection.',
  weld: 'Welding is for trained people, with guarding and eye protection. Welding pulls the face: measure again before facing.',
  crack: 'A cracked or welded-over cover is not to be returned to service on the strength of a calculation.',
  torque: "Torque, gap and balance figures of the vehicle's and the parts' makers come first.",
  competition: 'Competition use needs a cover certified for it under the rules of the event.',
};

const ALL: readonly CautionKind[] = ['general', 'lathe', 'weld', 'crack', 'torque', 'competition'];

/** One caution, where it matters. */
export function Caution({ kind }: { kind: CautionKind }) {
  return (
    <p class="caution">
      <Sign status="caution" /> <span>{CAUTIONS[kind]}</span>
    </p>
  );
}

/** Several at once, as at the foot of a printed sheet. */
export function Cautions({ kinds = ALL }: { kinds?: readonly CautionKind[] }) {
  return (
    <p class="caution">
      <Sign status="caution" /> <span>{kinds.map((kind) => CAUTIONS[kind]).join(' ')}</span>
    </p>
  );
}
