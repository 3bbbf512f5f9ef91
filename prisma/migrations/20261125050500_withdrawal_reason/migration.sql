-- AlterTable
ALTER TABLE "safeguard_test" ADD COLUMN     "reason" TEXT;

-- From here on what Prisma has no word for.

ALTER TABLE "safeguard_test"
  ADD CONSTRAINT "safeguard_test_reason_of_withdrawal" CHECK ("reason" IS NULL OR "result" = 'withdrawn');
