import { type Job, LOOK_ITEMS } from '../../../shared/words/job.ts';
import { LIST_ITEM, type Photo, photoItemWord } from '../../../shared/words/photo.ts';
import { writePlace } from '../../../shared/words/places.ts';
import { briefLength, type LengthUnit } from '../../../shared/words/print.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, type Option } from '../../parts/form/fieldBox.tsx';
import { When } from '../../parts/when.tsx';
import type { PlaceView } from './measure.tsx';
import { JobForm, type Refused } from './section.tsx';
import { ITEM_WORD } from './stepWords.ts';

export interface PhotosProps {
  readonly job: Job;
  /** Every photo the job had at this revision. */
  readonly photos: readonly Photo[];
  /** In which section: what was looked at, or the places that are measured. */
  readonly section: 'look' | 'measure';
  readonly places: readonly PlaceView[];
  /** Names of the items of its inspection lists. */
  readonly listItems: readonly string[];
  readonly token: string;
  readonly unit: LengthUnit;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

const OWN_PLACE = 'own';

/** "Welds", "90°, radius 110 mm", "the whole cover". */
function photoPlace({ place }: Pick<Photo, 'place'>, unit: LengthUnit): string {
  if (place.spot === 'item') return photoItemWord(place.item);
  if (place.spot === 'job') return 'The whole cover';
  return `At ${place.angleDeg}°, radius ${briefLength(place.radiusMm, unit)}`;
}

/** Photos as small pictures with what they show, and a form for another. */
export function Photos(props: PhotosProps) {
  const { photos, section, unit, refused, readOnly } = props;
  const shown = photos.filter((photo) => (photo.place.spot === 'station') === (section === 'measure'));
  return (
    <div class="photos-part">
      {shown.length > 0 && (
        <ul class="photos">
          {shown.map((photo) => (
            <li>
              <PhotoShown photo={photo} unit={unit} />
            </li>
          ))}
        </ul>
      )}
      {!readOnly && (
        <details class="change no-print" open={refused !== null}>
          <summary>{section === 'look' ? 'Add a photo' : 'Add a photo of a spot on the face'}</summary>
          <PhotoForm {...props} />
        </details>
      )}
    </div>
  );
}

function PhotoForm({ job, section, places, listItems, token, unit, initials, refused }: PhotosProps) {
  const typed = refused?.fields;
  const error = errorsOf(refused?.faults ?? []);
  const own = typed?.place === OWN_PLACE;
  return (
    <JobForm
      id={`photo-${section}-form`}
      action={`/jobs/${encodeURIComponent(job.number)}/photos`}
      file
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refused}
      submit="Save the photo"
      first={false}
    >
      <input type="hidden" name="in" value={section} />
      <input type="hidden" name="token" value={token} />
      <div class="fields">
        <Choice
          label="What it shows"
          name="place"
          value={typed?.place}
          error={error('place')}
          options={
            section === 'look'
              ? [
                  ...LOOKED_AT,
                  ...listItems.map((name) => ({ value: `item:${LIST_ITEM}${name}`, label: name })),
                ]
              : stationsOf(places, unit)
          }
        />
        {section === 'measure' && (
          <OwnPlace fields={own ? (typed ?? {}) : {}} faults={refused?.faults ?? []} unit={unit} />
        )}
        <Field
          label="Photo"
          name="file"
          type="file"
          error={error('file')}
          hint={refused ? 'Choose the photo again; it was not saved.' : 'JPEG, PNG or WebP, up to 12 MB'}
          input={{ accept: 'image/jpeg,image/png,image/webp', capture: 'environment' }}
        />
        <Field label="Note" name="note" value={typed?.note} error={error('note')} size="full" optional />
      </div>
    </JobForm>
  );
}

/** For a photo of a place that is none of the stations. */
function OwnPlace({
  fields,
  faults,
  unit,
}: {
  fields: Readonly<Record<string, string>>;
  faults: Refused['faults'];
  unit: LengthUnit;
}) {
  const error = errorsOf(faults);
  return (
    <>
      <Field
        label="Angle from stud 1"
        name="angle"
        value={fields.angle ?? ''}
        unit="°"
        error={error('angle')}
        hint="Only for another spot"
        optional
      />
      <Field
        label="Radius"
        name="radius"
        value={fields.radius ?? ''}
        unit={unit}
        error={error('radius')}
        hint="Only for another spot"
        optional
      />
    </>
  );
}

const LOOKED_AT: readonly Option[] = [
  { value: 'job', label: 'the whole cover' },
  ...LOOK_ITEMS.map((item) => ({ value: `item:${item}`, label: ITEM_WORD[item].toLowerCase() })),
];

function stationsOf(places: readonly PlaceView[], unit: LengthUnit): readonly Option[] {
  const stations = places.filter((place) => !place.own);
  return [
    ...stations.map(({ index, angleDeg, radiusMm, place }) => ({
      value: `station:${writePlace({ angleDeg, radiusMm })}`,
      label: `station ${index + 1}${place === '' ? '' : `, ${place}`}, radius ${briefLength(radiusMm, unit)}`,
    })),
    { value: OWN_PLACE, label: 'another spot' },
  ];
}

function PhotoShown({ photo, unit }: { photo: Photo; unit: LengthUnit }) {
  const place = photoPlace(photo, unit);
  const scale = Math.min(1, 320 / Math.max(photo.width, photo.height));
  return (
    <figure class="photo">
      <a href={`/photos/${photo.hash}.jpg`}>
        <img
          src={`/photos/${photo.hash}-small.jpg`}
          alt={`${place}${photo.note === '' ? '' : `: ${photo.note}`}`}
          width={Math.max(1, Math.round(photo.width * scale))}
          height={Math.max(1, Math.round(photo.height * scale))}
          loading="lazy"
        />
      </a>
      <figcaption>
        <b>{place}</b>
        {photo.note !== '' && `: ${photo.note}`}{' '}
        <span class="who">
          {photo.who}, <When at={photo.at} />, revision {photo.revision}
        </span>
      </figcaption>
    </figure>
  );
}

/** On paper: what each shows, by name; the pictures stay with the job. */
export function PhotoList({ photos, unit }: { photos: readonly Photo[]; unit: LengthUnit }) {
  if (photos.length === 0) return null;
  return (
    <section>
      <h2>Photos of this job</h2>
      <p>
        {photos.map((photo, i) => (
          <>
            {i > 0 && '; '}
            {photoPlace(photo, unit)}
            {photo.note !== '' && ` (${photo.note})`}, {photo.who}
          </>
        ))}
        .
      </p>
    </section>
  );
}
