import { keepBrokers } from '#server/worker/keep-brokers';

// A worker that does nothing but hold the connections to brokers, until it is killed.
keepBrokers(100, 2);
