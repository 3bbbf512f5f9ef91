import type { Facility } from '../facility/facility';
import { taker } from '../equipment/take';
import { shiftsInForce } from '../rota/in-force';
import { type Cover, coverOf, hoursWithNobody } from '../rota/cover';
import { compareGravest, gravest } from './gravest';
import { remedyText } from './remedies';
import type { FacilityReview, Finding, SystemReview } from './result';
import { reviewSystem } from './review-system';
import { unwalkedRounds } from './unwalked';
import { hourWords } from './words';

/**
 * Review a whole site.
 * @param on ISO date in the site's zone on which tests are judged
 * @returns with the system first that is closest to losing animals
 * @param only keys of the systems to review; all when absent
 */
export function reviewFacility(described: Facility, on: string, only?: readonly string[]): FacilityReview {
  const facility = shiftsInForce(described, on);
  const systems = facility.systems.filter((s) => only === undefined || only.includes(s.key));
  return {
    site: facility.site.key,
    name: facility.site.name,
    on,
    systems: worstFirst(systems.map((system) => reviewSystem(facility, system, on, undefined, true))),
    findings: siteFindings(facility),
  };
}

/** The gravest system first; of those alike, the one with less to spare for its animals, then as the file has them. */
function worstFirst(reviews: SystemReview[]): SystemReview[] {
  const ranked = reviews.map((review) => ({ review, worst: gravest(review, 'claimed') }));
  const spare = ({ worst: { claimed } }: SystemReview) =>
    claimed.case === null ? Number.POSITIVE_INFINITY : (claimed.spareS ?? Number.NEGATIVE_INFINITY);
  const compareSpare = (a: number, b: number) => (a === b ? 0 : a - b);
  ranked.sort((a, b) => compareGravest(a.worst, b.worst) || compareSpare(spare(a.review), spare(b.review)));
  return ranked.map(({ review }) => review);
}

/** Findings that belong to the site as a whole. */
export function siteFindings(facility: Facility): Finding[] {
  const cover = coverOf(facility, taker('nominal'));
  return [rotaGap(cover), unwalkedRounds(facility, cover)].filter((finding) => finding !== null);
}

function rotaGap(cover: Cover): Finding | null {
  const hours = hoursWithNobody(cover);
  if (hours.length === 0) return null;
  return {
    id: 'do:rota-gap',
    grade: 'medium',
    remedy: remedyText('rota-gap'),
    title: 'Hours with nobody on site or on call',
    lines: stretches(hours).map(([from, length]) => ({
      from: { rule: 'rota-gap' },
      cause: `${hourWords(from)}, ${length} h`,
      consequence: 'An alarm raised then waits until somebody comes on duty.',
      figures: [{ name: 'hours', value: String(length) }],
      source: 'the rota as entered',
    })),
  };
}

/** Runs of hours of the week, joined across the end of the week: first hour and length. */
function stretches(hours: number[]): [number, number][] {
  const open = new Set(hours);
  if (open.size === 168) return [[0, 168]];
  return hours
    .filter((h) => !open.has((h + 167) % 168))
    .map((h) => {
      let length = 1;
      while (open.has((h + length) % 168)) length++;
      return [h, length];
    });
}
