-- AlterTable
ALTER TABLE "review_result" ADD COLUMN     "demand" JSONB;
