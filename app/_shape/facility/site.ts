import { DAYS, type Site } from '#core/facility/site';
import { z } from 'zod';
import { amount } from './amount';
import { callStepsShape } from './call-step';
import { competenceShape } from './competence';
import { figure } from './figure';
import { generatorShape } from './generator';
import { mainsShape } from './mains';
import { noun } from './noun';
import { powerCutShape } from './power-cut';
import { watchdogShape } from './watchdog';
import { choiceOf } from './list';
import { freeDayShape } from './shift';
import { addressKey, localTime, nameText, zoneName } from './words';

const hoursShape = noun('openingHours', 'When a site opens and closes on some days of the week.', {
  days: choiceOf(DAYS, 'Days of the week, mon to sun.'),
  opens: localTime('Opens.'),
  closes: localTime('Closes; at or before the hour at which it opens: on the next day.'),
});

const quietShape = noun('quietTime', 'When no loud test is to be run, of a generator or a blower.', {
  days: choiceOf(DAYS, 'Days of the week on which it begins, mon to sun.'),
  from: localTime('Begins.'),
  to: localTime('Ends; at or before the hour at which it begins: on the next day.'),
  why: nameText('Why.').optional(),
});

const wayShape = noun('wayToSite', 'The way between this site and another one that some people answer as well.', {
  site: addressKey('Key of the other site.'),
  min: amount('Min', 'From door to door, as somebody drives it at a bad hour', { least: 0, most: 1440 }),
});

export const siteShape = noun('site', 'One place under one management, with one time zone and one rota.', {
  key: addressKey('Key of the site.'),
  name: nameText('Name of the site.'),
  zone: zoneName('Zone of the site.'),
  altitudeM: figure('M', 'Height above sea level; sets the air pressure').optional(),
  answerOnSiteMin: figure('Min', 'From being called to having understood, for someone on the premises').optional(),
  answerOnCallMin: figure('Min', 'From being called to leaving home, for someone on call').optional(),
  answerOnSiteNightMin: figure(
    'Min',
    'The same on the premises between 22:00 and 07:00; left out: as by day',
  ).optional(),
  answerOnCallNightMin: figure('Min', 'The same on call between 22:00 and 07:00; left out: as by day').optional(),
  generator: generatorShape.optional().describe('Stand-by generator.'),
  mains: mainsShape.optional().describe('Water of the mains, where make-up or a supply comes from it.'),
  powerCut: powerCutShape.optional().describe('What people can do when the utility fails and stays away.'),
  watchdog: watchdogShape
    .optional()
    .describe('A watch kept outside the site that calls when Holdfast or a gateway falls silent.'),
  keepReadingsMonths: z
    .int()
    .gte(4)
    .lte(1200)
    .optional()
    .describe(
      'Months for which each single reading is kept; left out: for ever. Hours and days stay, and so does what an incident cites. ' +
        'Readings go by whole months, and only when every site on the machine lets them go.',
    ),
  callSteps: callStepsShape
    .optional()
    .describe(
      'In which order people are called for an alarm. Left out: whoever is on, after 15 minutes leads, after 30 everyone.',
    ),
  repeatCallsMin: amount(
    'Min',
    'From the last step of calls to the same people once more, while nobody acknowledges; left out: 15',
    { least: 5, most: 240 },
  ).optional(),
  openingHours: z.array(hoursShape).max(7).optional().describe('When it opens and closes, where it does.'),
  holidays: z
    .array(freeDayShape)
    .max(400)
    .optional()
    .describe('Days on which it is closed out of turn: sheets may leave them out.'),
  waysTo: z
    .array(wayShape)
    .min(1)
    .max(50)
    .refine((ways) => new Set(ways.map(({ site }) => site)).size === ways.length, {
      error: 'must not name the same site twice',
    })
    .optional()
    .describe('Ways to other sites. Whoever is on site there is credited here with that way at least.'),
  quietHours: z
    .array(quietShape)
    .min(1)
    .max(20)
    .optional()
    .describe(
      'When no loud test is to be run, of a generator or a blower: neighbours, opening hours, animals at rest.',
    ),
  testCallEachDays: amount('Days', 'From one test call of a person to the next', { least: 1, most: 366 })
    .refine(Number.isInteger, { error: 'must be a whole number of days' })
    .optional(),
  competences: z.array(competenceShape).min(1).max(50).optional().describe('Work that not everybody here may do.'),
}) satisfies z.ZodType<Site>;
