using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Letters;

/// <summary>What all the reeds had in common, and what to do about it on the next one.</summary>
internal static class LessonBlocks
{
    internal static LetterBlock? Lesson(LetterMaterial material, Phrasing phrasing)
    {
        var thread = material.Thread;
        if (!thread.HasLesson)
        {
            return null;
        }

        var roots = Roots(material);
        var having = Having(material);
        var sentences = new List<LetterSentence>
        {
            LetterSentence.Plain(having.Count < 2
                ? "If you take only one thing from this letter, let it be this."
                : phrasing.Pick(
                    "lesson",
                    "If you take only one thing from this letter, let it be this.",
                    "One thing runs through your reeds, and it is good news, because it can be learnt.",
                    "When I compared your reeds, one thing stood out.")),
        };
        if (thread.LessonWords is { } words)
        {
            sentences.Add(new(Prose.Sentence(words), roots));
        }

        if (Explain(thread.LessonKind) is { } explained)
        {
            sentences.Add(new(explained, roots));
        }

        if (thread.LessonEvidence is { } evidence)
        {
            sentences.Add(new("I saw this " + Prose.Inside(evidence), roots));
        }

        return new LetterBlock("lesson", BlockKind.Lesson, [new(sentences)]) { Heading = Heading(material, having) };
    }

    // Common is what at least two reeds have; one reed alone teaches something, too.
    private static string Heading(LetterMaterial material, List<int> having) => having.Count switch
    {
        > 1 => "What they have in common",
        1 when material.Batch.Reeds.Count > 1 => $"What to take from reed {Prose.Number(having[0])}",
        _ => material.Batch.Reeds.Count == 1 ? "What to take from it" : "What to take from these reeds",
    };

    private static List<int> Having(LetterMaterial material) =>
    [
        .. material.Batch.Reeds
            .Where(reed => material.LogOf(reed.Id).Findings.Any(finding => IsTheLesson(material, finding)))
            .Select(reed => reed.Number),
    ];

    internal static LetterBlock? Habit(LetterMaterial material) => material.Thread.HabitSentence is { } habit
        ? new LetterBlock("habit", BlockKind.Habit,
        [
            new(
            [
                LetterSentence.Plain(Prose.Sentence(habit)),
                LetterSentence.Plain("I have not seen you work, so you will know better than I whether that is so."),
            ]),
        ])
        : null;

    internal static LetterBlock? CheckYourself(LetterMaterial material) => material.Thread.HasLesson
        ? new LetterBlock(
            "check",
            BlockKind.CheckYourself,
            [.. TeachingNote.For(material.Thread.LessonKind).Checks.Select(LetterParagraph.Plain)])
        {
            Heading = "Check it yourself",
            IsList = true,
        }
        : null;

    internal static LetterBlock? Stroke(LetterMaterial material, Phrasing phrasing)
    {
        if (!material.Thread.HasLesson || TeachingNote.For(material.Thread.LessonKind).Stroke is not { } stroke)
        {
            return null;
        }

        return new LetterBlock("stroke", BlockKind.Stroke,
        [
            new(
            [
                .. stroke.Select(LetterSentence.Plain),
                LetterSentence.Plain(phrasing.Pick(
                    "minor",
                    "If you are not grown up yet, do this only with a parent or guardian and a teacher beside you.",
                    "Until you are grown up, do this only with a parent or guardian and your teacher at the table.")),
            ]),
        ])
        {
            Heading = "The stroke",
        };
    }

    internal static LetterBlock? Plan(LetterMaterial material, Phrasing phrasing)
    {
        if (!material.Thread.HasLesson)
        {
            return null;
        }

        var note = TeachingNote.For(material.Thread.LessonKind);
        return new LetterBlock("plan", BlockKind.Plan, [.. note.Plan.Take(TeachingNote.MostSteps).Select(LetterParagraph.Plain)])
        {
            Heading = phrasing.Pick("plan", "A plan for your next reed", "For the next reed"),
            IsList = true,
        };
    }

    private static string? Explain(FindingKindId? kind) => kind is { } id ? FindingCatalogue.Find(id)?.ForStudent : null;

    private static List<EntryId> Roots(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.SelectMany(reed => material.LogOf(reed.Id).Findings)
            .Where(finding => IsTheLesson(material, finding))
            .Select(finding => finding.Fact.Root),
    ];

    private static bool IsTheLesson(LetterMaterial material, FindingNow finding) =>
        material.Thread.LessonKind is { } kind && finding.Finding.FindingKind == kind
        && finding.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork };
}
