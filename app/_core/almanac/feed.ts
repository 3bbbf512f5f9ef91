import { toKilograms } from '../units/mass';
import { CALCIUM_CARBONATE_PER_CHARGE } from '../water/alkalinity-units';
import {
  ammoniaFromFeed,
  ammoniaFromFeedLaw,
  nitrificationAlkalinityLaw,
  nitrificationOxygenLaw,
} from '../water/ammonia-from-feed';
import { type AlmanacTable, figure, grid, listed, steps, stepsIn } from './table';

/** g of sodium bicarbonate for a mole of charge. */
const BICARBONATE = 84.007;

/** What feed becomes. */
export const FEED: AlmanacTable = {
  id: 'feed',
  title: 'Ammonia by feed, and what turning it into nitrate takes',
  use: 'To see what a day’s feed adds when the biofilter is lost, and what the biofilter uses when it is not.',
  leavesOut:
    'Feed that lies and rots, and growth of animals and bacteria: with it 4.18 g of oxygen and 7.05 g of calcium carbonate for a gram of nitrogen (from memory).',
  laws: ['ammonia-from-feed', 'nitrification-oxygen', 'nitrification-alkalinity'],
  sheets: (custom) => {
    const unit = custom === 'us' ? 'oz' : 'g';
    const feeds = stepsIn(
      custom,
      [10, 20, 50, 100, 200, 500, 1000],
      [0.5, 1, 2, 4, 8, 16, 32],
      (oz) => 1000 * toKilograms(oz, 'oz'),
    );
    return [
      grid(
        {
          id: 'ammonia',
          caption: `g of total ammonia nitrogen, by feed (down, ${unit}) and its protein (across, %)`,
          corner: unit,
        },
        feeds,
        steps([10, 20, 30, 40, 45, 50, 60]),
        (feed, protein) => figure(ammoniaFromFeedLaw, 2, 1, feed, protein / 100),
      ),
      listed(
        {
          id: 'nitrification',
          caption:
            'Feed of 45 % protein: what nitrification of its ammonia uses, and the bicarbonate of soda that makes it good (g)',
          corner: unit,
          columns: ['Oxygen', 'Alkalinity as CaCO₃', 'NaHCO₃'],
        },
        feeds,
        (feed) => {
          const nitrogen = ammoniaFromFeed(feed, 0.45);
          return [
            figure(nitrificationOxygenLaw, 1, 1, nitrogen),
            figure(nitrificationAlkalinityLaw, 1, CALCIUM_CARBONATE_PER_CHARGE, nitrogen),
            figure(nitrificationAlkalinityLaw, 1, BICARBONATE, nitrogen),
          ];
        },
      ),
    ];
  },
};
