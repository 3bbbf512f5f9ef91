/** How far a cubic can rise above both its ends, for each unit of slope × h there: the greatest value of z·(1 − z)². */
export const REACH = 4 / 27;
