import { fromSquareMetres } from '#core/units/area';
import { fromCubicMetresPerSecond } from '#core/units/flow';
import { fromMetres } from '#core/units/length';
import { fromKilograms } from '#core/units/mass';
import { type Custom, lookOf, type ShownUnit, show, unitFor } from '#core/units/shown';
import { fromCelsius } from '#core/units/temperature';
import { fromKelvinDifference } from '#core/units/temperature-difference';
import { fromCubicMetres } from '#core/units/volume';

/** Kinds of figure that people read in one of two customs. */
export type FigureKind = 'temperature' | 'difference' | 'volume' | 'length' | 'area' | 'flow' | 'mass';

/** The unit a person of this custom reads a kind of figure in. */
function unitOf(units: Custom, kind: FigureKind): ShownUnit {
  return unitFor(units, kind === 'difference' ? 'temperature' : kind);
}

/** How the unit is written. */
export function symbolOf(units: Custom, kind: FigureKind): string {
  return lookOf(unitOf(units, kind)).symbol;
}

/**
 * A figure of the facility file or of a review as a person of this custom reads it.
 * @param value °C, K, litres, mm, m², L/h or g
 * @returns the number in the person's unit
 */
export function inUnits(units: Custom, kind: FigureKind, value: number): number {
  const us = units === 'us';
  switch (kind) {
    case 'temperature':
      return fromCelsius(value, us ? 'F' : 'C');
    case 'difference':
      return fromKelvinDifference(value, us ? 'F' : 'C');
    case 'volume':
      return fromCubicMetres(value / 1000, us ? 'galUS' : 'L');
    case 'length':
      return fromMetres(value / 1000, us ? 'in' : 'mm');
    case 'area':
      return fromSquareMetres(value, us ? 'ft2' : 'm2');
    case 'flow':
      return fromCubicMetresPerSecond(value / 3.6e6, us ? 'galUS/h' : 'L/h');
    case 'mass':
      return fromKilograms(value / 1000, us ? 'oz' : 'g');
  }
}

/** A figure with its unit, in the person's custom: `figure('us', 'volume', 432)` reads "114 US gal". */
export function figure(units: Custom, kind: FigureKind, value: number): string {
  return inThousands(show(inUnits(units, kind, value), unitOf(units, kind)));
}

/** From ten thousand on, digits stand in threes, parted by a narrow space that does not break. */
function inThousands(said: string): string {
  return said.replace(/\d{5,}/, (digits) => digits.replace(/\B(?=(\d{3})+$)/g, '\u202f'));
}
