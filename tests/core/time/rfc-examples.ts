const DAYS_OF_JANUARY = Array.from({ length: 31 }, (_, at) => String(at + 1)).join(' ');

/** Source: RFC 5545 section 3.8.5.3, whose examples all start at 09:00 in New York; summer time ended on 26 October 1997. */
export const RFC_EXAMPLES: [start: string, rule: string, expected: string, to?: string][] = [
  ['1997-09-02', 'FREQ=DAILY;COUNT=10', '1997-09: 2 3 4 5 6 7 8 9 10 11'],
  ['1997-09-02', 'FREQ=DAILY;INTERVAL=10;COUNT=5', '1997-09: 2 12 22; 1997-10: 2 12'],
  ['1997-09-02', 'FREQ=WEEKLY;COUNT=10', '1997-09: 2 9 16 23 30; 1997-10: 7 14 21 28; 1997-11: 4'],
  [
    '1997-09-02',
    'FREQ=WEEKLY;INTERVAL=2;WKST=SU',
    '1997-09: 2 16 30; 1997-10: 14 28; 1997-11: 11 25; 1997-12: 9 23',
    '1998-01-01',
  ],
  [
    '1997-09-01',
    'FREQ=WEEKLY;INTERVAL=2;UNTIL=19971224T000000Z;WKST=SU;BYDAY=MO,WE,FR',
    '1997-09: 1 3 5 15 17 19 29; 1997-10: 1 3 13 15 17 27 29 31; 1997-11: 10 12 14 24 26 28; 1997-12: 8 10 12 22',
  ],
  ['1997-09-02', 'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH', '1997-09: 2 4 16 18 30; 1997-10: 2 14 16'],
  [
    '1997-09-05',
    'FREQ=MONTHLY;COUNT=10;BYDAY=1FR',
    '1997-09: 5; 1997-10: 3; 1997-11: 7; 1997-12: 5; 1998-01: 2; 1998-02: 6; 1998-03: 6; 1998-04: 3; 1998-05: 1; 1998-06: 5',
  ],
  [
    '1997-09-07',
    'FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU',
    '1997-09: 7 28; 1997-11: 2 30; 1998-01: 4 25; 1998-03: 1 29; 1998-05: 3 31',
  ],
  [
    '1997-09-28',
    'FREQ=MONTHLY;BYMONTHDAY=-3',
    '1997-09: 28; 1997-10: 29; 1997-11: 28; 1997-12: 29; 1998-01: 29; 1998-02: 26',
    '1998-03-01',
  ],
  [
    '1997-09-30',
    'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1',
    '1997-09: 30; 1997-10: 1 31; 1997-11: 1 30; 1997-12: 1 31; 1998-01: 1 31; 1998-02: 1',
  ],
  // There the start is 2 September, no Friday, and taken out by an EXDATE; here it is the first Friday the 13th.
  [
    '1998-02-13',
    'FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13',
    '1998-02: 13; 1998-03: 13; 1998-11: 13; 1999-08: 13; 2000-10: 13',
    '2000-12-31',
  ],
  ['1997-09-04', 'FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3', '1997-09: 4; 1997-10: 7; 1997-11: 6'],
  [
    '1997-09-29',
    'FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2',
    '1997-09: 29; 1997-10: 30; 1997-11: 27; 1997-12: 30; 1998-01: 29; 1998-02: 26; 1998-03: 30',
    '1998-04-01',
  ],
  ['1997-08-05', 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO', '1997-08: 5 10 19 24'],
  ['1997-08-05', 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU', '1997-08: 5 17 19 31'],
  ['2007-01-15', 'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5', '2007-01: 15 30; 2007-02: 15; 2007-03: 15 30'],
  [
    '1998-01-01',
    'FREQ=DAILY;UNTIL=20000131T140000Z;BYMONTH=1',
    `1998-01: ${DAYS_OF_JANUARY}; 1999-01: ${DAYS_OF_JANUARY}; 2000-01: ${DAYS_OF_JANUARY}`,
  ],
];

/** "1997-09: 2 3" as the dates it stands for. */
export const datesOf = (words: string) =>
  words.split('; ').flatMap((month) => {
    const [name = '', days = ''] = month.split(': ');
    return days.split(' ').map((day) => `${name}-${day.padStart(2, '0')}`);
  });
