-- A broker that is subscribed to is a source of readings as well, and has no token.
ALTER TABLE "reading_source" ALTER COLUMN "token_hash" DROP NOT NULL;

-- Sensors of which it was said that nothing more will come from them: their silence need not be waited for.
ALTER TABLE "reading_arrival" ADD COLUMN "gone_ids" UUID[] NOT NULL DEFAULT '{}';

CREATE TABLE "reading_broker" (
    "site_id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "address" TEXT NOT NULL,
    "username" TEXT,
    "password_sealed" BYTEA,
    "authority" TEXT,
    "asks_rebirth" BOOLEAN NOT NULL,

    CONSTRAINT "reading_broker_pkey" PRIMARY KEY ("site_id","source_id")
);

CREATE TABLE "broker_topic" (
    "site_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "topic" TEXT NOT NULL,
    "payload" TEXT NOT NULL,
    "field" TEXT,
    "time_field" TEXT,
    "unit" TEXT,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "broker_topic_pkey" PRIMARY KEY ("site_id","id")
);

CREATE TABLE "broker_state" (
    "site_id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "held_by" UUID,
    "held_until" TIMESTAMPTZ(3),
    "version" INTEGER,
    "connected_at" TIMESTAMPTZ(3),
    "message_at" TIMESTAMPTZ(3),
    "failed_at" TIMESTAMPTZ(3),
    "failed_why" TEXT,
    "messages" BIGINT NOT NULL DEFAULT 0,
    "stored" BIGINT NOT NULL DEFAULT 0,
    "refused" BIGINT NOT NULL DEFAULT 0,
    "retained" BIGINT NOT NULL DEFAULT 0,

    CONSTRAINT "broker_state_pkey" PRIMARY KEY ("site_id","source_id")
);

CREATE TABLE "broker_unacked" (
    "site_id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "packet_id" INTEGER NOT NULL,
    "digest" BYTEA NOT NULL,
    "stored_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "broker_unacked_pkey" PRIMARY KEY ("site_id","source_id","packet_id")
);

CREATE TABLE "sparkplug_node" (
    "site_id" UUID NOT NULL,
    "source_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "gaps" INTEGER NOT NULL DEFAULT 0,
    "held_back" BIGINT NOT NULL DEFAULT 0,

    CONSTRAINT "sparkplug_node_pkey" PRIMARY KEY ("site_id","source_id","name")
);

ALTER TABLE "reading_broker" ADD CONSTRAINT "reading_broker_site_id_source_id_fkey" FOREIGN KEY ("site_id", "source_id") REFERENCES "reading_source"("site_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "broker_topic" ADD CONSTRAINT "broker_topic_site_id_source_id_fkey" FOREIGN KEY ("site_id", "source_id") REFERENCES "reading_broker"("site_id", "source_id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "broker_state" ADD CONSTRAINT "broker_state_site_id_source_id_fkey" FOREIGN KEY ("site_id", "source_id") REFERENCES "reading_broker"("site_id", "source_id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "broker_unacked" ADD CONSTRAINT "broker_unacked_site_id_source_id_fkey" FOREIGN KEY ("site_id", "source_id") REFERENCES "reading_broker"("site_id", "source_id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "sparkplug_node" ADD CONSTRAINT "sparkplug_node_site_id_source_id_fkey" FOREIGN KEY ("site_id", "source_id") REFERENCES "reading_broker"("site_id", "source_id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "broker_topic" ADD CONSTRAINT "broker_topic_payload_known" CHECK ("payload" IN ('number', 'field', 'senml', 'sparkplug'));
ALTER TABLE "broker_topic" ADD CONSTRAINT "broker_topic_field_named" CHECK (("payload" = 'field') = ("field" IS NOT NULL));
ALTER TABLE "sparkplug_node" ADD CONSTRAINT "sparkplug_node_phase_known" CHECK ("phase" IN ('unborn', 'born', 'stale'));
