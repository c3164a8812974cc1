import type { Asked, BenchState } from '../../../shared/measuring/benchState.ts';
import { drawnRadius, type PlanRadii, radiusDrawnAt } from '../../../shared/measuring/planRadii.ts';
import { type Place, turned } from '../../../shared/words/places.ts';
import { byId } from './byId.ts';

/** A touch this near a station, in px, is that station: a target of 48 px. The nearest wins, so none overlap. */
const STATION_PX = 24;
/** A heat mark is where it was touched, unless that is on the very sign of a station. */
const SIGN_PX = 14;

export type Touched =
  | { readonly on: 'station'; readonly at: number }
  | { readonly on: 'track'; readonly place: Place }
  | { readonly on: 'nothing' };

/** The sign in the drawing that shows what is asked; it carries where the drawing puts each radius. */
function target(): SVGGElement {
  return byId('measuring-plan-asked', SVGGElement);
}

function radii(): PlanRadii {
  return JSON.parse(target().dataset.radii ?? '[]') as PlanRadii;
}

/** Where a place lies in the drawing: 0° at the top, clockwise. */
function inDrawing({ angleDeg, radiusMm }: Place): { readonly x: number; readonly y: number } {
  const turn = (angleDeg * Math.PI) / 180;
  const r = drawnRadius(radii(), radiusMm);
  return { x: r * Math.sin(turn), y: -r * Math.cos(turn) };
}

/** The place at a point of the drawing, in whole degrees and millimeters: a finger does no better. */
function placeAt({ x, y }: DOMPoint): Place {
  const angleDeg = turned(Math.round((Math.atan2(x, -y) * 180) / Math.PI));
  return { angleDeg, radiusMm: Math.round(radiusDrawnAt(radii(), Math.hypot(x, y))) };
}

export function drawTarget(asked: Asked | null): void {
  target().setAttribute('visibility', asked === null ? 'hidden' : 'visible');
  if (asked === null) return;
  const { x, y } = inDrawing(asked);
  target().setAttribute('transform', `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
}

/** What a touch of the drawing means; null where it was not touched. A heat mark is placed only when it was begun. */
export function touched(state: BenchState, event: MouseEvent, placingMark: boolean): Touched | null {
  const svg = event.target instanceof Element ? event.target.closest<SVGSVGElement>('svg.plan') : null;
  const matrix = svg?.getScreenCTM();
  if (!matrix) return null;
  const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  const [near] = state.stations
    .map((place, at) => {
      const { x, y } = inDrawing(place);
      return { at, away: Math.hypot(x - point.x, y - point.y) * matrix.a };
    })
    .sort((a, b) => a.away - b.away);
  if (near && near.away <= (placingMark ? SIGN_PX : STATION_PX)) return { on: 'station', at: near.at };
  const place = placeAt(point);
  const onTrack = place.radiusMm >= state.trackInnerMm - 1 && place.radiusMm <= state.trackOuterMm + 1;
  return placingMark && onTrack ? { on: 'track', place } : { on: 'nothing' };
}
