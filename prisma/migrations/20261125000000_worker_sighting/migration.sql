-- When each worker process last said that it is alive.
CREATE TABLE "worker_sighting" (
    "worker" TEXT NOT NULL,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "worker_sighting_pkey" PRIMARY KEY ("worker")
);
