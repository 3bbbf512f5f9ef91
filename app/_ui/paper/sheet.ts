import { StyleSheet } from '@react-pdf/renderer';
import type { Verdict } from '#core/review/result';

/** Family that the caller has registered before anything is drawn. */
export const FAMILY = 'Holdfast Sans';
/** Width of what is printed on A4 between the margins, pt. */
export const WIDTH = 515;

/** The shape of each verdict, black on white, from the letters of the font; always before its word. */
export const VERDICT_SIGNS: Readonly<Record<Verdict, string>> = {
  'no-warning': '◆',
  'too-late': '●',
  'some-hours': '◐',
  covered: '○',
  dormant: '◌',
  holds: '–',
  'not-assessed': '?',
};

/** Black and white, ruled, as a log is printed. No height of lines: the library multiplies it anew on every sheet that something runs on to. */
export const sheet = StyleSheet.create({
  page: {
    paddingTop: 48,
    paddingBottom: 52,
    paddingHorizontal: 40,
    fontFamily: FAMILY,
    fontSize: 8.5,

    color: '#000000',
  },
  head: {
    position: 'absolute',
    top: 24,
    left: 40,
    right: 40,
    flexDirection: 'row',
    justifyContent: 'space-between',
    fontSize: 7,
    color: '#333333',
  },
  foot: {
    position: 'absolute',
    bottom: 26,
    left: 40,
    right: 40,
    flexDirection: 'row',
    justifyContent: 'space-between',
    fontSize: 7,
    color: '#333333',
  },
  title: { fontSize: 18, fontWeight: 'bold', marginBottom: 8 },
  sectionRule: { marginTop: 16, marginBottom: 6, height: 1, backgroundColor: '#000000' },
  findingRule: { marginTop: 8, marginBottom: 5, height: 0.5, backgroundColor: '#666666' },
  sectionTitle: { fontSize: 12.5, fontWeight: 'bold' },
  note: { fontSize: 7.5, color: '#333333', marginTop: 2, marginBottom: 4 },
  heading: { fontSize: 9.5, fontWeight: 'bold', marginTop: 7, marginBottom: 2 },
  text: { marginBottom: 4, maxWidth: 470 },
  strong: { fontWeight: 'bold' },
  item: { flexDirection: 'row', marginBottom: 2, maxWidth: 470 },
  bullet: { width: 12 },
  itemText: { flex: 1 },
  table: { marginTop: 3, marginBottom: 6 },
  caption: { fontSize: 7.5, color: '#333333', marginBottom: 2 },
  headRow: { flexDirection: 'row', borderBottomWidth: 0.8, borderBottomColor: '#000000', paddingBottom: 1.5 },
  row: { flexDirection: 'row', borderBottomWidth: 0.4, borderBottomColor: '#999999', paddingVertical: 1.8 },
  cell: { paddingRight: 5, fontSize: 7.5 },
  headCell: { paddingRight: 5, fontSize: 7.5, fontWeight: 'bold' },
  findingHead: { flexDirection: 'row', marginBottom: 3 },
  rank: { width: 54 },
  number: { fontSize: 12, fontWeight: 'bold' },
  findingTitle: { flex: 1, fontSize: 10, fontWeight: 'bold' },
  tick: { fontFamily: FAMILY, fontSize: 6 },
  mark: { fontFamily: FAMILY, fontSize: 7 },
  chartTitle: { fontFamily: FAMILY, fontSize: 7, fontWeight: 'bold' },
  drawing: { marginTop: 3, marginBottom: 6 },
});
