import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import { PersonForm } from '../sign-in/person-form';
import { instantSaid } from '../words/instant';
import type { CallsView } from './calls-view';
import { SetWebhook } from './set-webhook';
import { WebhookRecipe } from './webhook-recipe';

/** What can be done with the webhook of a site. */
export interface WebhookActions {
  setWebhook: FormAction<{ secret: string }>;
  removeWebhook: FormAction<unknown>;
}

/** Where calls are posted besides, and how a service takes them. */
export function WebhookSection({ page, actions }: { page: CallsView; actions: WebhookActions }) {
  const { site, webhook, mayWebhook } = page;
  return (
    <Section
      id="webhook"
      title="Webhook"
      note={<p>Posts each call to a service of yours, which rings telephones, writes texts or sounds a horn.</p>}
    >
      {webhook === null ? (
        <p>None.</p>
      ) : (
        <p>
          Calls are posted to {webhook.url ?? webhook.host}, since {instantSaid(webhook.since, site.zone)}.
        </p>
      )}
      {mayWebhook ? <SetWebhook site={site.key} isOther={webhook !== null} set={actions.setWebhook} /> : null}
      {mayWebhook && webhook !== null ? (
        <PersonForm send={actions.removeWebhook} hidden={{ site: site.key }} button="Remove the webhook" look="plain" />
      ) : null}
      <WebhookRecipe />
    </Section>
  );
}
