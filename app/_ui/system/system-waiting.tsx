import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { SystemDrawing } from '../drawing/system-drawing';
import { Section } from '../frame/section';
import type { Speech } from '../words/said';
import { Description } from './description';

/** A system whose review is not there yet: what it is. */
export function SystemWaiting({
  facility,
  system,
  speech,
  on,
}: {
  facility: Facility;
  system: System;
  speech: Speech;
  on: string;
}) {
  return (
    <Section id="drawing" wide title="What it is">
      <SystemDrawing facility={facility} system={system} fault={null} units={speech.units} on={on} />
      <Description facility={facility} system={system} speech={speech} on={on} />
    </Section>
  );
}
