import { Document, Font, Page, renderToBuffer, Text, View } from '@react-pdf/renderer';
import type { Facility } from '#core/facility/facility';
import { coursesOfCases } from '#core/review/courses-of-cases';
import { leadingCases } from '#core/review/leading-cases';
import type { Finding, SystemReview } from '#core/review/result';
import type { StudyState } from '#core/review/study';
import type { Custom } from '#core/units/shown';
import type { Part } from '../document/block';
import type { DocumentData, ReviewOrigin } from '../document/document-data';
import { documentParts } from '../document/parts/document-parts';
import { leadBlocks } from '../document/parts/lead';
import { instantSaid } from '../words/instant';
import { namesOf } from '../words/names';
import { type OnPaper, PaperBlocks } from './paper-blocks';
import { FAMILY, sheet } from './sheet';

/** Courses that are plotted on paper. */
const PLOTTED = 12;

/** What a paper is made from. Plain data: it may cross to a thread. */
export interface PaperJob {
  facility: Facility;
  /** Key of the system. */
  system: string;
  review: SystemReview;
  siteFindings: Finding[];
  study: StudyState;
  origin: ReviewOrigin;
  /** Whether the review says what its inputs say now. Only then can courses be drawn. */
  isCurrent: boolean;
  units: Custom;
  /** UTC, ISO: when it is printed. */
  at: string;
  /** Files of the letters. */
  fonts: { regular: string; bold: string };
}

/**
 * The review of a system as a PDF, in black and white on A4, with the same content as its page.
 *
 * @returns the file
 * @throws  when there is no such system in the facility
 */
export async function answer(job: PaperJob): Promise<Uint8Array> {
  Font.register({
    family: FAMILY,
    fonts: [
      { src: job.fonts.regular, fontWeight: 'normal' },
      { src: job.fonts.bold, fontWeight: 'bold' },
    ],
  });
  // Words stay whole: a broken name of a thing reads like another one.
  Font.registerHyphenationCallback((word) => [word]);
  return await renderToBuffer(<ReviewPaper job={job} />);
}

function ReviewPaper({ job }: { job: PaperJob }) {
  const { facility, review, origin, at } = job;
  const system = facility.systems.find(({ key }) => key === job.system);
  if (!system) throw new Error(`no system ${job.system} to print the review of`);
  const speech = { units: job.units, names: namesOf(facility, system) };
  const courses = job.isCurrent ? coursesOfCases(facility, system, origin.judgedOn, leadingCases(review, PLOTTED)) : {};
  const data: DocumentData = { ...job, system, speech, at: '', plotted: new Set(Object.keys(courses)) };
  const paper: OnPaper = { system, speech, courses };
  const { zone } = facility.site;
  const title = `Review of ${system.name}`;
  return (
    <Document title={title} subject={facility.site.name} creator="Holdfast" producer="Holdfast" language="en">
      <Page size="A4" style={sheet.page} wrap>
        <View style={sheet.head} fixed>
          <Text>{`${title}, ${facility.site.name}`}</Text>
          <Text>{`Printed ${instantSaid(at, zone)} (${zone})`}</Text>
        </View>
        <Text style={sheet.title}>{title}</Text>
        <PaperBlocks blocks={leadBlocks(data)} paper={paper} />
        {documentParts(data).map((part) => (
          <Section key={part.id} part={part} paper={paper} />
        ))}
        <View style={sheet.foot} fixed>
          <Text>Holdfast switches nothing and is no protective device. Simulated times are estimates.</Text>
          <Text render={({ pageNumber, totalPages }) => `Page ${pageNumber} of ${totalPages}`} />
        </View>
      </Page>
    </Document>
  );
}

function Section({ part: { title, note, blocks }, paper }: { part: Part; paper: OnPaper }) {
  // Readers of PDFs list the sections by these; the types of the library know them of whole sheets only.
  const mark = { bookmark: title };
  return (
    <>
      <View wrap={false} minPresenceAhead={60} {...mark}>
        <View style={sheet.sectionRule} />
        <Text style={sheet.sectionTitle}>{title}</Text>
        {note ? <Text style={sheet.note}>{note}</Text> : null}
      </View>
      <PaperBlocks blocks={blocks} paper={paper} />
    </>
  );
}
