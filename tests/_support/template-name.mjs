// @ts-check

/** The migrated database that is copied. */
export const TEMPLATE = 'holdfast_template';
