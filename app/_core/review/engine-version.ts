/**
 * Version of what a review is computed by: the laws, the model, the fault cases, the rules and the words. Raise it with
 * every change that may make a review come out otherwise; stored reviews of another version are then computed anew.
 */
export const ENGINE_VERSION = '7';
