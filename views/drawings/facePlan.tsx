import { drawnRadius, type PlanRadii, rowsApart, toScale } from '../../shared/measuring/planRadii.ts';
import type { CoverShape, Mark } from '../../shared/words/cover.ts';
import { type LengthUnit, lengthFigure, listInWords, printLength } from '../../shared/words/print.ts';
import {
  at,
  type Box,
  boxRound,
  inside,
  LETTER,
  overlaps,
  type Point,
  pointToSegment,
  segmentEnters,
  textWidth,
} from './lettering.ts';

export type PlanState = 'next' | 'measured' | 'thinnest' | 'missing';

export interface PlanStation {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly wallMm?: number | null;
  readonly wallAfterMm?: number | null;
  readonly state: PlanState;
}

export interface FacePlanProps {
  /** Starts every id in the drawing; one per drawing on a page. */
  readonly id: string;
  readonly shape: CoverShape;
  readonly bossDiameterMm: number | null;
  readonly rimDiameterMm: number | null;
  readonly padDiameterMm: number | null;
  readonly stations: readonly PlanStation[];
  readonly marks: readonly Mark[];
  /** Counted from 0; gets the callout. */
  readonly thinnest?: number | null;
  /** The place that is asked for now, drawn as a target above everything; left out where nothing is asked. */
  readonly asked?: { readonly angleDeg: number; readonly radiusMm: number } | null;
  /** Not to scale where rows of stations lie too close for a finger: they are drawn apart. */
  readonly forTouch?: boolean;
  /** Where no wall is left by a cut, the wall that was measured stands beside a station. */
  readonly asMeasured?: boolean;
  readonly unit: LengthUnit;
}

export const PLAN_BOX: Box = { left: -176, top: -174, right: 176, bottom: 174 };
const RIM = 128;
/** Above this a number beside each would be unreadable, and only dots are drawn. */
const MOST_NUMBERED = 40;
/** With more there is no room for figures. */
const MOST_WITH_WALLS = 20;
const DOT = 3.8;
const TARGET = 10;
const FIGURE = 17;
const DIGIT_HEIGHT = 0.74;

/** Where a place on the face lies in the drawing: 0° at the top, clockwise. */
export function onPlan(angleDeg: number, distance: number): Point {
  const angle = (angleDeg * Math.PI) / 180;
  return { x: distance * Math.sin(angle), y: -distance * Math.cos(angle) };
}

/** What was not measured is drawn at a size that looks right, and nothing is computed from it. */
function outline({ shape, bossDiameterMm, rimDiameterMm, padDiameterMm }: FacePlanProps) {
  const padMm = padDiameterMm ?? 0.085 * shape.studCircleDiameterMm;
  const widest = Math.max(shape.studCircleDiameterMm + 1.2 * padMm, shape.trackOuterDiameterMm * 1.05);
  const rimMm = Math.max(rimDiameterMm ?? 0, rimDiameterMm === null ? widest : shape.trackOuterDiameterMm);
  return { padMm, rimMm, bossMm: bossDiameterMm ?? 0.42 * shape.trackInnerDiameterMm };
}

/** Drawing units for a millimeter. */
export function planScale(props: FacePlanProps): number {
  return RIM / (outline(props).rimMm / 2);
}

/** Where the plan draws each radius; two knots only where it is to scale. */
function planRadii(props: FacePlanProps): PlanRadii {
  const rim = { radiusMm: outline(props).rimMm / 2, drawn: RIM };
  return props.forTouch
    ? rowsApart(
        props.stations.map(({ radiusMm }) => radiusMm),
        rim,
      )
    : toScale(rim);
}

interface Label {
  readonly text: string;
  readonly centre: Point;
  readonly box: Box;
  /** From the station to a label that stands apart from it. */
  readonly leader?: readonly [Point, Point];
}

export function studLabels(studCount: number): Label[] {
  return Array.from({ length: studCount }, (_, index) => {
    const text = `stud ${index + 1}`;
    const width = textWidth(text, LETTER);
    const way = onPlan((360 * index) / studCount, 1);
    const distance = RIM + 8 + (Math.abs(way.x) * width) / 2 + (Math.abs(way.y) * LETTER * DIGIT_HEIGHT) / 2;
    const centre = { x: way.x * distance, y: way.y * distance };
    return { text, centre, box: boxRound(centre, width, LETTER) };
  });
}

interface Callout {
  readonly from: Point;
  readonly elbow: Point;
  readonly shelf: readonly [number, number];
  readonly figure: string;
  readonly note: string;
  readonly boxes: readonly [Box, Box];
}

/**
 * The figure of the thinnest station beyond a shelf in one of the four corners, which the round part leaves free.
 * Of every corner and shelf end, the leader is taken that keeps farthest from other stations and lettering.
 */
export function placeCallout(
  station: Point,
  figure: string,
  note: string,
  others: readonly Point[],
  lettering: readonly Box[],
): Callout {
  const width = Math.max(textWidth(figure, FIGURE), textWidth(note, LETTER)) + 4;
  let best: Callout | null = null;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const bottom of [true, false]) {
    for (const right of [true, false]) {
      const left = right ? PLAN_BOX.right - width : PLAN_BOX.left;
      const shelfY = bottom ? PLAN_BOX.bottom - 39 : PLAN_BOX.top + 42;
      const textLeft = left + 2;
      const textTop = bottom ? shelfY + 1 : PLAN_BOX.top + 4;
      const boxes = [
        { left: textLeft, right: textLeft + textWidth(figure, FIGURE), top: textTop, bottom: textTop + 19 },
        {
          left: textLeft,
          right: textLeft + textWidth(note, LETTER),
          top: textTop + 20,
          bottom: textTop + 37,
        },
      ] as const;
      for (const share of [0, 0.25, 0.5, 0.75, 1]) {
        const elbowX = left + share * width;
        const elbow = { x: elbowX, y: shelfY };
        const length = Math.hypot(elbow.x - station.x, elbow.y - station.y);
        const from = {
          x: station.x + ((elbow.x - station.x) * 8) / length,
          y: station.y + ((elbow.y - station.y) * 8) / length,
        };
        const near = others.reduce((least, other) => Math.min(least, pointToSegment(other, from, elbow)), 40);
        const struck = [...lettering, ...boxes].filter((box) => segmentEnters(from, elbow, box)).length;
        const cost = length + (near < DOT + 3 ? 500 * (DOT + 4 - near) : 0) + 4000 * struck;
        if (cost < bestCost) {
          bestCost = cost;
          best = { from, elbow, shelf: [left, left + width], figure, note, boxes };
        }
      }
    }
  }
  // The loops above always run, so there is always a best.
  return best!;
}

/** Degrees to either side of its station at which a label may stand outside the rim. */
const BESIDE = [13, -13, 18, -18, 24, -24, 31, -31];

type Place = Pick<Label, 'centre' | 'leader'>;

function outsideRim(angleDeg: number, station: Point, width: number, height: number): Place {
  const way = onPlan(angleDeg, 1);
  const distance = RIM + 7 + (Math.abs(way.x) * width) / 2 + (Math.abs(way.y) * height) / 2;
  const centre = { x: way.x * distance, y: way.y * distance };
  const to = onPlan(angleDeg, RIM + 5);
  const length = Math.hypot(to.x - station.x, to.y - station.y);
  const from = {
    x: station.x + ((to.x - station.x) * (DOT + 1)) / length,
    y: station.y + ((to.y - station.y) * (DOT + 1)) / length,
  };
  return { centre, leader: [from, to] };
}

/** Whether a circle round the middle runs through a box. */
function straddles(box: Box, radius: number): boolean {
  const near = Math.hypot(Math.max(box.left, 0, -box.right), Math.max(box.top, 0, -box.bottom));
  const far = Math.hypot(
    Math.max(Math.abs(box.left), Math.abs(box.right)),
    Math.max(Math.abs(box.top), Math.abs(box.bottom)),
  );
  return near < radius && radius < far;
}

/** What numbers are kept off, and what they are better kept off. */
export interface Crowded {
  readonly taken: readonly Box[];
  readonly pads: readonly Point[];
  readonly padRadius: number;
  readonly leader: readonly [Point, Point] | null;
  /** The wall left at each station, as a figure; empty where none is to be shown. */
  readonly walls?: readonly string[];
  /** Radii of the lines that lettering is better kept off. */
  readonly lines?: readonly number[];
  /** The target may come to stand on any station, and no number is then to lie beneath it. */
  readonly targets?: boolean;
}

/** A number beside each station, where there is room for it; null where there is none. */
export function placeNumbers(
  stations: readonly PlanStation[],
  points: readonly Point[],
  crowded: Crowded,
): (Label | null)[] {
  const signReach = crowded.targets ? TARGET : DOT;
  const dots = points.map((point) => boxRound(point, 2 * signReach + 1, 2 * signReach + 1));
  const innermost = Math.min(...stations.map((station) => station.radiusMm)) + 0.5;
  const placed: Box[] = [...crowded.taken];
  const order = stations
    .map((station, index) => ({ station, index }))
    .sort((a, b) => Number(b.station.state !== 'measured') - Number(a.station.state !== 'measured'));
  const labels: (Label | null)[] = stations.map(() => null);
  for (const { station, index } of order) {
    const reach = station.state === 'next' ? 11 : station.state === 'thinnest' ? 8 : signReach;
    const places = placesRound(station, points[index]!, reach, station.radiusMm > innermost);
    const others = dots.filter((_, other) => other !== index);
    const wall = crowded.walls?.[index];
    // The wall left beside the number where there is room, else the number alone.
    const best = [...(wall ? [`${index + 1} · ${wall}`] : []), String(index + 1)].reduce<Label | null>(
      (found, text) => found ?? bestPlace(text, places, placed, others, crowded),
      null,
    );
    if (best !== null) placed.push(best.box);
    labels[index] = best;
  }
  return labels;
}

/** Where a station's number may stand for its width, the best place first. */
function placesRound(
  station: PlanStation,
  point: Point,
  reach: number,
  outer: boolean,
): ((width: number) => Place)[] {
  const height = LETTER * DIGIT_HEIGHT;
  const beside = [0, 45, -45, 90, -90, 135, -135, 180].map((turn) => (width: number): Place => {
    const way = onPlan(station.angleDeg + (outer ? 0 : 180) + turn, 1);
    const distance = reach + 2.5 + (Math.abs(way.x) * width) / 2 + (Math.abs(way.y) * height) / 2;
    return { centre: { x: point.x + way.x * distance, y: point.y + way.y * distance } };
  });
  if (!outer) return beside;
  const outside = BESIDE.map(
    (turn) => (width: number) => outsideRim(station.angleDeg + turn, point, width, height),
  );
  return [...beside, ...outside];
}

/** The place that costs least; null where each costs too much. A number with its wall is sooner given up. */
function bestPlace(
  text: string,
  places: readonly ((width: number) => Place)[],
  placed: readonly Box[],
  dots: readonly Box[],
  crowded: Crowded,
): Label | null {
  const width = textWidth(text, LETTER);
  let best: Label | null = null;
  let bestCost = text.length > 3 ? 60 : 90;
  for (const [preference, place] of places.entries()) {
    const { centre, leader } = place(width);
    const box = boxRound(centre, width, LETTER * DIGIT_HEIGHT);
    const cost = 0.8 * preference + costOf({ centre, leader }, box, placed, dots, crowded);
    if (cost < bestCost) {
      bestCost = cost;
      best = { text, centre, box, leader };
    }
  }
  return best;
}

/** What lettering in this box would lie on, lines and pads counting for less. */
function costOf(
  { centre, leader: own }: Place,
  box: Box,
  placed: readonly Box[],
  dots: readonly Box[],
  { pads, padRadius, leader, lines = [] }: Crowded,
): number {
  const wider = boxRound(centre, box.right - box.left + 3, box.bottom - box.top + 3);
  const hits =
    placed.filter((other) => overlaps(box, other, 1.5)).length +
    dots.filter((dot) => overlaps(box, dot)).length +
    (inside(box, PLAN_BOX) ? 0 : 1) +
    (leader !== null && segmentEnters(leader[0], leader[1], wider) ? 1 : 0) +
    (own === undefined
      ? 0
      : [...placed, ...dots].filter((other) => segmentEnters(own[0], own[1], other)).length);
  const onPads = pads.filter((pad) => Math.hypot(pad.x - centre.x, pad.y - centre.y) < padRadius + 3).length;
  return 100 * hits + 3 * onPads + 9 * lines.filter((radius) => straddles(box, radius)).length;
}

/** Told apart by shape: filled, hollow, a target for the next, a lozenge for the thinnest. */
function StationSign(props: { state: PlanState; point: Point; small: boolean; index?: number }) {
  const { state, point, small, index } = props;
  const [x, y] = [at(point.x), at(point.y)];
  switch (state) {
    case 'measured':
      return <circle cx={x} cy={y} r={small ? 1.9 : DOT} class="st-measured" data-station={index} />;
    case 'missing':
      return <circle cx={x} cy={y} r={small ? 1.9 : DOT} class="st-missing" data-station={index} />;
    case 'thinnest':
      return <path d={`M${x} ${at(point.y - 7)}l7 7l-7 7l-7 -7Z`} class="st-thinnest" />;
    case 'next':
      return (
        <g class="st-next">
          <circle cx={x} cy={y} r="10" class="st-ring" />
          <path d={`M${at(point.x - 14)} ${y}h6m16 0h6M${x} ${at(point.y - 14)}v6m0 16v6`} class="st-ring" />
          <circle cx={x} cy={y} r="3.4" class="st-core" />
        </g>
      );
  }
}

/** The target where the next reading belongs. A script moves it, and reads the radii to know where it was touched. */
function AskedSign(props: {
  id: string;
  asked: NonNullable<FacePlanProps['asked']> | null;
  radii: PlanRadii;
}) {
  const { id, asked, radii } = props;
  const { x, y } = asked ? onPlan(asked.angleDeg, drawnRadius(radii, asked.radiusMm)) : { x: 0, y: 0 };
  return (
    <g
      id={`${id}-asked`}
      class="st-next"
      data-radii={JSON.stringify(radii)}
      transform={`translate(${at(x)} ${at(y)})`}
      visibility={asked ? undefined : 'hidden'}
    >
      <circle r="10" class="st-ring" />
      <path d="M-14 0h6m16 0h6M0 -14v6m0 16v6" class="st-ring" />
      <circle r="3.4" class="st-core" />
    </g>
  );
}

/** Whether rows are drawn apart, so that the plan is not to scale. */
export function isSpread(props: FacePlanProps): boolean {
  return planRadii(props).length > 2;
}

/** The sentence a listener gets instead of the drawing. */
function planInWords(props: FacePlanProps): string {
  const { shape, stations, marks, thinnest, unit } = props;
  const count = (state: PlanState) => stations.filter((station) => station.state === state).length;
  const low = thinnest === null || thinnest === undefined ? undefined : stations[thinnest];
  const next = stations.findIndex((station) => station.state === 'next');
  const parts = [
    `${shape.studCount} studs on a circle of ${printLength(shape.studCircleDiameterMm, unit, 'coarse')}, stud 1 at the top, clockwise.`,
    `${stations.length} stations: ${listInWords([
      `${count('measured') + count('thinnest')} measured`,
      ...(count('missing') + count('next') > 0
        ? [`${count('missing') + count('next')} still to measure`]
        : []),
    ])}.`,
  ];
  if (next >= 0) parts.push(`Next is station ${next + 1}, at ${at(stations[next]!.angleDeg)}°.`);
  const wall = low?.wallAfterMm ?? low?.wallMm;
  if (low && wall !== null && wall !== undefined) {
    parts.push(
      `Thinnest is station ${(thinnest ?? 0) + 1}, at ${at(low.angleDeg)}°: ${printLength(wall, unit)} ${low.wallAfterMm != null ? 'after the cut' : 'as measured'}.`,
    );
  }
  if (isSpread(props)) parts.push('Not to scale: rows of stations are drawn apart.');
  if (marks.length > 0) parts.push(`${marks.length} ${marks.length === 1 ? 'heat mark' : 'heat marks'}.`);
  return parts.join(' ');
}

/** Everything of the plan that is placed before it is drawn. */
function placed(props: FacePlanProps) {
  const { shape, stations } = props;
  const { padMm, rimMm, bossMm } = outline(props);
  const k = RIM / (rimMm / 2);
  const radii = planRadii(props);
  const drawn = (radiusMm: number) => drawnRadius(radii, radiusMm);
  return {
    radii,
    drawn,
    studRadius: drawn(shape.studCircleDiameterMm / 2),
    track: [drawn(shape.trackOuterDiameterMm / 2), drawn(shape.trackInnerDiameterMm / 2)] as const,
    bossRadius: drawn(bossMm / 2),
    padRadius: (k * padMm) / 2,
    sideWall: RIM - Math.max(2.5, k * shape.nominalWallMm),
    studs: Array.from({ length: shape.studCount }, (_, index) => (360 * index) / shape.studCount),
    points: stations.map((station) => onPlan(station.angleDeg, drawn(station.radiusMm))),
    many: stations.length > MOST_NUMBERED,
    names: studLabels(shape.studCount),
  };
}

type Placed = ReturnType<typeof placed>;

function calloutOf(
  { stations, thinnest, unit }: FacePlanProps,
  { points, many, names }: Placed,
): Callout | null {
  const low = thinnest === null || thinnest === undefined ? undefined : stations[thinnest];
  const lowWall = low?.wallAfterMm ?? low?.wallMm;
  if (low === undefined || lowWall === null || lowWall === undefined) return null;
  return placeCallout(
    points[thinnest ?? 0]!,
    printLength(lowWall, unit),
    low.wallAfterMm != null ? 'thinnest after the cut' : 'thinnest',
    many ? [] : points.filter((_, index) => index !== thinnest),
    names.map((name) => name.box),
  );
}

function numbersOf(props: FacePlanProps, plan: Placed, callout: Callout | null): (Label | null)[] {
  const { stations, thinnest, unit } = props;
  if (plan.many) return [];
  return placeNumbers(stations, plan.points, {
    taken: [...plan.names.map((name) => name.box), ...(callout?.boxes ?? [])],
    pads: plan.studs.map((angle) => onPlan(angle, plan.studRadius)),
    padRadius: plan.padRadius,
    leader: callout && [callout.from, callout.elbow],
    walls: stations.map(({ wallMm, wallAfterMm }, index) => {
      const mm = wallAfterMm ?? (props.asMeasured ? wallMm : null);
      return mm == null || index === thinnest || stations.length > MOST_WITH_WALLS
        ? ''
        : lengthFigure(mm, unit, 'coarse');
    }),
    lines: [RIM, ...plan.track, plan.studRadius],
    targets: props.asked !== undefined,
  });
}

/** Plan of the face, seen from the clutch side. */
export function FacePlan(props: FacePlanProps) {
  const { id, stations, thinnest } = props;
  const plan = placed(props);
  const callout = calloutOf(props, plan);
  const numbers = numbersOf(props, plan, callout);
  const { left, top, right, bottom } = PLAN_BOX;
  return (
    <svg
      viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
      class="plan"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>Plan of the face, clutch side</title>
      <desc id={`${id}-desc`}>{planInWords(props)}</desc>
      <defs>
        <radialGradient id={`${id}-heat`}>
          <stop offset="0" class="heat-0" />
          <stop offset=".55" class="heat-1" />
          <stop offset="1" class="heat-2" />
        </radialGradient>
      </defs>
      <Outline plan={plan} />
      <HeatMarks id={id} marks={props.marks} drawn={plan.drawn} />
      {callout && (
        <path
          d={`M${at(callout.from.x)} ${at(callout.from.y)}L${at(callout.elbow.x)} ${at(callout.elbow.y)}M${at(callout.shelf[0])} ${at(callout.elbow.y)}H${at(callout.shelf[1])}`}
          class="leader"
        />
      )}
      <path
        d={numbers
          .map((label) => label?.leader)
          .filter((own) => own !== undefined)
          .map(([from, to]) => `M${at(from.x)} ${at(from.y)}L${at(to.x)} ${at(to.y)}`)
          .join('')}
        class="leader"
      />
      {stations.map((station, index) => (
        <StationSign
          state={index === thinnest ? 'thinnest' : station.state}
          point={plan.points[index]!}
          small={plan.many}
          index={props.asked === undefined ? undefined : index}
        />
      ))}
      {props.asked !== undefined && <AskedSign id={id} asked={props.asked} radii={plan.radii} />}
      <Lettering {...props} numbers={numbers} names={plan.names} callout={callout} />
    </svg>
  );
}

/** Rim, side wall, track, boss and studs. */
function Outline({ plan }: { plan: Placed }) {
  const { studs, studRadius, padRadius, sideWall, track } = plan;
  return (
    <>
      <path d={`M${-RIM - 5} 0H${RIM + 5}M0 ${-RIM - 5}V${RIM + 5}`} class="chain" />
      <circle r={RIM} class="thick" />
      {Math.abs(sideWall - studRadius) > 6 && <circle r={at(sideWall)} class="thin" />}
      <circle r={at(track[0])} class="thick" />
      <circle r={at(track[1])} class="thick" />
      <circle r={at(plan.bossRadius)} class="thick" />
      <circle r={at(studRadius)} class="chain" />
      {studs.map((angle) => {
        const { x, y } = onPlan(angle, studRadius);
        const from = onPlan(angle, studRadius - padRadius - 3);
        const to = onPlan(angle, RIM + 5);
        return (
          <g>
            {angle % 90 !== 0 && (
              <path d={`M${at(from.x)} ${at(from.y)}L${at(to.x)} ${at(to.y)}`} class="chain" />
            )}
            <circle cx={at(x)} cy={at(y)} r={at(padRadius)} class="hidden-line" />
            <circle cx={at(x)} cy={at(y)} r={at(padRadius * 0.42)} class="hidden-line" />
          </g>
        );
      })}
      <path d={`M0 ${-RIM - 4}V${-RIM + 6}`} class="scribe" />
    </>
  );
}

function HeatMarks({
  id,
  marks,
  drawn,
}: {
  id: string;
  marks: FacePlanProps['marks'];
  drawn: Placed['drawn'];
}) {
  return (
    <>
      {marks.map((mark) => {
        const { x, y } = onPlan(mark.angleDeg, drawn(mark.radiusMm));
        const size = Math.min(22, 9 + 38 * mark.depthMm);
        return (
          <ellipse
            rx={at(size)}
            ry={at(size * 0.62)}
            transform={`translate(${at(x)} ${at(y)}) rotate(${at(mark.angleDeg)})`}
            fill={`url(#${id}-heat)`}
          />
        );
      })}
    </>
  );
}

/** Stations' numbers, studs' names, and the figure of the thinnest. */
function Lettering({
  stations,
  thinnest,
  numbers,
  names,
  callout,
}: FacePlanProps & {
  numbers: readonly (Label | null)[];
  names: readonly Label[];
  callout: Callout | null;
}) {
  return (
    <>
      {numbers.map(
        (label, index) =>
          label && (
            <text
              x={at(label.centre.x)}
              y={at(label.centre.y + (LETTER * DIGIT_HEIGHT) / 2)}
              class={stations[index]?.state === 'next' || index === thinnest ? 'mid halo strong' : 'mid halo'}
            >
              {label.text}
            </text>
          ),
      )}
      {names.map((name) => (
        <text x={at(name.centre.x)} y={at(name.centre.y + (LETTER * DIGIT_HEIGHT) / 2)} class="mid label">
          {name.text}
        </text>
      ))}
      {callout && (
        <>
          <text x={at(callout.boxes[0].left)} y={at(callout.boxes[0].top + 15)} class="figure-text">
            {callout.figure}
          </text>
          <text x={at(callout.boxes[1].left)} y={at(callout.boxes[1].top + 12)} class="label">
            {callout.note}
          </text>
        </>
      )}
    </>
  );
}

const KEY: Readonly<Record<PlanState, string>> = {
  next: 'next',
  measured: 'measured',
  missing: 'to measure',
  thinnest: 'thinnest',
};

/** What the signs in the plan mean, in a line for beneath it. */
export function PlanKey({ states }: { states: readonly PlanState[] }) {
  return (
    <ul class="plan-key">
      {states.map((state) => (
        <li>
          <svg viewBox="-15 -15 30 30" width="24" height="24" aria-hidden="true" focusable="false">
            <StationSign state={state} point={{ x: 0, y: 0 }} small={false} />
          </svg>{' '}
          {KEY[state]}
        </li>
      ))}
    </ul>
  );
}
