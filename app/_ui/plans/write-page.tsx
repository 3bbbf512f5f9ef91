import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import type { PlanAction } from './answers';
import { plansAt } from './data';
import { PlanFormBody, type PlanFormData } from './plan-form';

/** The page on which the next version of a plan is written. */
export function WritePlanPageBody({ form, units, write }: { form: PlanFormData; units: Custom; write: PlanAction }) {
  const { site, system, equipment, from } = form;
  return (
    <Page
      title={`Write the plan of ${equipment.name}`}
      over={[
        { href: plansAt(site.key), name: 'Plans' },
        { href: plansAt(site.key, system.key), name: system.name },
        { href: plansAt(site.key, system.key, equipment.key), name: equipment.name },
      ]}
      lead={
        <p>
          It begins from version {from}. Highest authority first; the order of the layers is fixed. Only what a device
          carries out is credited as automatic.
        </p>
      }
    >
      <PlanFormBody key={units} form={form} units={units} write={write} />
    </Page>
  );
}
