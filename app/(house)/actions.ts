'use server';

import { loadDemo } from '#server/facility/load-demo';
import { act } from '#server/gate/act';
import { listSystemsShape } from '#server/reviews/list-systems';

// Nothing has to be said to load the demo, as nothing has to be said to list systems. The page is not refreshed: it goes on
// saying how the people of the demo sign in until whoever reads it goes on themselves.
export const loadDemoAction = act(listSystemsShape, loadDemo);
