import type { Asked, BenchState } from '../../../shared/measuring/benchState.ts';
import type { Place } from '../../../shared/words/places.ts';
import { byId } from './byId.ts';

/** A touch this near a station, in px, means the station. */
const NEAR_PX = 14;

export type Touched =
  | { readonly on: 'station'; readonly at: number }
  | { readonly on: 'track'; readonly place: Place }
  | { readonly on: 'nothing' };

/** The sign in the drawing that shows what is asked; it carries how many drawing units a millimeter has. */
function target(): SVGGElement {
  return byId('measuring-plan-asked', SVGGElement);
}

function scale(): number {
  return Number(target().dataset.scale);
}

/** Where a place lies in the drawing: 0° at the top, clockwise. */
function inDrawing({ angleDeg, radiusMm }: Place): { readonly x: number; readonly y: number } {
  const turn = (angleDeg * Math.PI) / 180;
  const r = scale() * radiusMm;
  return { x: r * Math.sin(turn), y: -r * Math.cos(turn) };
}

export function drawTarget(asked: Asked | null): void {
  target().setAttribute('visibility', asked === null ? 'hidden' : 'visible');
  if (asked === null) return;
  const { x, y } = inDrawing(asked);
  target().setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
}

/** What a touch of the drawing means; null where it was not touched. */
export function touched(state: BenchState, event: MouseEvent): Touched | null {
  const svg = event.target instanceof Element ? event.target.closest<SVGSVGElement>('svg.plan') : null;
  const matrix = svg?.getScreenCTM();
  if (!matrix) return null;
  const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  const near = state.stations
    .map((place, at) => {
      const { x, y } = inDrawing(place);
      return { at, away: Math.hypot(x - point.x, y - point.y) * matrix.a };
    })
    .sort((a, b) => a.away - b.away)[0];
  if (near && near.away < NEAR_PX) return { on: 'station', at: near.at };
  const radiusMm = Math.round(Math.hypot(point.x, point.y) / scale());
  const angleDeg = (Math.round((Math.atan2(point.x, -point.y) * 180) / Math.PI) + 360) % 360;
  const onTrack = radiusMm >= state.trackInnerMm - 1 && radiusMm <= state.trackOuterMm + 1;
  return onTrack ? { on: 'track', place: { angleDeg, radiusMm } } : { on: 'nothing' };
}
