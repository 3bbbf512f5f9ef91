import type { Context } from './context';
import { gradeRank } from './findings';
import { remedyText } from './remedies';
import type { Finding } from './result';
import { RULES } from './rules/catalogue';
import type { Breach, Rule } from './rules/rule';

/** Findings of the paperwork checks, one for each remedy. */
export function paperworkFindings(context: Context): Finding[] {
  const groups = new Map<string, { rule: Rule; breaches: { rule: Rule; breach: Breach }[] }>();
  for (const rule of RULES) {
    if (rule.toldApart) continue;
    for (const breach of rule.check(context)) {
      const group = groups.get(rule.remedy) ?? { rule, breaches: [] };
      group.breaches.push({ rule, breach });
      groups.set(rule.remedy, group);
    }
  }
  return [...groups].map(([remedy, { rule, breaches }]) => ({
    id: `do:${remedy}`,
    grade:
      breaches.map((b) => b.breach.grade ?? b.rule.grade).sort((a, b) => gradeRank(a) - gradeRank(b))[0] ?? rule.grade,
    remedy: remedyText(rule.remedy),
    title: rule.title,
    lines: breaches.map(({ rule: from, breach }) => ({
      from: { rule: from.id },
      cause: breach.cause,
      consequence: breach.consequence,
      figures: breach.figures,
      source: from.source,
    })),
  }));
}
