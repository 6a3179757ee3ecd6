using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>What all the reeds had in common, and what to do about it on the next one.</summary>
internal static class LessonBlocks
{
    internal static LetterBlock? Lesson(LetterMaterial material, Phrasing phrasing, LetterSoFar told)
    {
        var thread = material.Thread;
        if (!thread.HasLesson)
        {
            return null;
        }

        var roots = Roots(material);
        var having = Having(material);
        var course = LessonCourse.Of(Found(material));
        IReadOnlyList<string> leads = having.Count < 2 ? LessonWordings.Lead : [.. LessonWordings.LeadMany, .. LessonWordings.Lead];
        var sentences = new List<LetterSentence> { LetterSentence.Plain(phrasing.Say("lesson", 0, leads)) };
        var alone = material.Batch.Reeds.Count(reed => reed.IsHere) == 1;
        // Of which it is suspected and no more, that is said apart: “in all four” isn’t said of three.
        var unsure = Unsure(material);
        var where = SeenIn.Reeds(thread.LessonEvidence, unsure.Count == having.Count ? having : [.. having.Except(unsure)], material.Batch.Reeds.Count(reed => reed.IsHere));
        // What was found stands right behind the sentence that leads to it; the teacher’s own words end the part.
        sentences.AddRange(Taught(material, having, alone ? null : where, course, phrasing, told));
        List<LetterSentence> became = [.. course.Sentences(phrasing)];
        sentences.AddRange(became);
        if (thread.LessonWords is { } words)
        {
            sentences.Add(new(Prose.Sentence(words), roots));
            if (where is not null && !alone && FindingWording.Of(thread.LessonKind) is not { Shows: not null })
            {
                sentences.Add(new(phrasing.Say("lesson-seen", 0, OpeningWordings.SeenIn, ("where", where)), roots));
            }
        }
        else if (became.Count == 0 && Note(material).Plan.Count > 0)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Say("lesson-next", 0, LessonWordings.WhatToDo)));
        }

        List<LetterParagraph> before = LessonBefore.Of(material, phrasing) is { IsGone: false } again ? [new([again.Sentence()])] : [];
        return new LetterBlock("lesson", BlockKind.Lesson, [new(sentences), .. before]) { Heading = Heading(material, having, course) };
    }

    // What was found, in which of the reeds, what it does in general, and how sure it is.
    private static IEnumerable<LetterSentence> Taught(LetterMaterial material, List<int> having, string? where, LessonCourse course, Phrasing phrasing, LetterSoFar told)
    {
        if (FindingWording.Of(material.Thread.LessonKind) is not { Shows: { } shows } wording)
        {
            yield break;
        }

        var (roots, unsure, named) = (Roots(material), Unsure(material), where is not null);
        (string, string)[] slots =
        [
            ("where", where ?? ""), ("they", having.Count == 1 ? "it" : "they"),
            ("what", phrasing.Clause("lesson-what", 0, [wording.What], course.IsPast)), ("shows", phrasing.Clause("lesson-shows", 0, [shows], false)),
            .. Doubt(course.IsPast),
        ];
        var (place, ways) = having.Count > 0 && unsure.Count == having.Count
            ? ("lesson-suspected", named ? LessonWordings.Suspected : LessonWordings.SuspectedAlone)
            : (named ? "lesson-in" : "lesson-alone", Ways(named, roots.Count > 0, course.IsPast));
        if (roots.Count > 0 && told.ExplainedWhatItDoes(material.Thread.LessonKind!.Value))
        {
            ways = LessonWordings.WithoutWhatItDoes(ways);
        }

        // What was noted only after a step may not have come with the reed.
        ways = Found(material).Any(found => found.Finding.Fact.Pass > 0) ? LessonWordings.WithoutArrival(ways) : ways;
        yield return new(phrasing.Say(place, 0, ways, slots), roots);
        if (unsure.Count > 0 && unsure.Count < having.Count)
        {
            (string, string)[] which = [("reeds", (unsure.Count == 1 ? "reed " : "reeds ") + Prose.List([.. unsure.Select(Prose.Number)])), .. Doubt(course.IsPast)];
            var gone = Found(material).Where(found => unsure.Contains(found.Reed)).All(found => found.Finding.Ended?.Now.Ending == FindingEnding.Gone);
            yield return new(phrasing.Say("lesson-unsure", 0, gone ? LessonWordings.NotCertainAndGone : LessonWordings.NotCertainIn, which), roots);
        }
    }

    private static (string, string)[] Doubt(bool past) => past ? [("suspect", "suspected"), ("am", "was"), ("is", "was")] : [("suspect", "suspect"), ("am", "am"), ("is", "is")];

    // The reeds on which it is suspected and no more.
    private static List<int> Unsure(LetterMaterial material) =>
    [
        .. Found(material).GroupBy(found => found.Reed).Where(reed => reed.All(found => found.Finding.Finding.Certainty == Certainty.Suspected)).Select(reed => reed.Key).Order(),
    ];

    private static IReadOnlyList<string> Ways(bool named, bool found, bool past) => (named, found, past) switch
    {
        (true, _, true) => LessonWordings.InReedsThen,
        (true, _, _) => LessonWordings.InReeds,
        (_, false, _) => LessonWordings.ToWatchFor,
        (_, _, true) => LessonWordings.AloneThen,
        _ => LessonWordings.Alone,
    };

    // Common is what at least two reeds have; one reed alone teaches something, too.
    private static string Heading(LetterMaterial material, List<int> having, LessonCourse course) => having.Count switch
    {
        > 1 => course.IsPast ? "What they had in common" : "What they have in common",
        1 when material.Batch.Reeds.Count > 1 => $"What to take from reed {Prose.Number(having[0])}",
        _ => material.Batch.Reeds.Count == 1 ? "What to take from it" : "What to take from these reeds",
    };

    private static List<int> Having(LetterMaterial material) => [.. Found(material).Select(found => found.Reed).Distinct()];

    internal static LetterBlock? Habit(LetterMaterial material, Phrasing phrasing) => material.Thread.HabitSentence is { } habit
        ? new LetterBlock("habit", BlockKind.Habit,
        [
            new(
            [
                LetterSentence.Plain(Prose.Sentence(habit)),
                LetterSentence.Plain(phrasing.Say("not-seen", 0, LessonWordings.NotSeen)),
            ]),
        ])
        : null;

    internal static LetterBlock? CheckYourself(LetterMaterial material, Phrasing phrasing) => material.Thread.HasLesson
        ? new LetterBlock(
            "check",
            BlockKind.CheckYourself,
            [.. Said("check", Note(material).Checks, material, phrasing).Select(LetterParagraph.Plain)])
        {
            Heading = "Check it yourself",
            IsList = true,
        }
        : null;

    internal static LetterBlock? Stroke(LetterMaterial material, Phrasing phrasing)
    {
        if (!material.Thread.HasLesson || Note(material).Stroke is not { } stroke)
        {
            return null;
        }

        return new LetterBlock("stroke", BlockKind.Stroke,
        [
            new(
            [
                .. Said("stroke", stroke, material, phrasing).Select(LetterSentence.Plain),
                LetterSentence.Plain(phrasing.Say("minor", 0, CautionWordings.Knife(material.Age))),
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

        var note = Note(material);
        var steps = Said("plan", note.Plan, material, phrasing).Take(TeachingNote.MostSteps);
        List<string> kept = [.. steps.Where(step => !PlanClash.IsBetween($"{material.Thread.HabitSentence} {material.Thread.LessonWords}", step))];
        return kept.Count == 0 ? null : new LetterBlock("plan", BlockKind.Plan, [.. kept.Select(LetterParagraph.Plain)])
        {
            Heading = phrasing.Say("plan-heading", 0, ["a plan for your next reed", "for the next reed", "your next reed, step by step"]),
            IsList = true,
        };
    }

    private static TeachingNote Note(LetterMaterial material) => TeachingNote.For(material.Thread.LessonKind, material.Batch.Scrape, material.Batch.Instrument);

    private static IEnumerable<string> Said(string place, IReadOnlyList<string> wordings, LetterMaterial material, Phrasing phrasing) => wordings.Select((wording, index) =>
        ForInstrument.Said(phrasing.Say(place, index, [wording], ("crow", material.Batch.CrowTarget.PitchClass.Name)), material.Batch.Instrument));

    private static List<EntryId> Roots(LetterMaterial material) => [.. Found(material).Select(found => found.Finding.Fact.Root)];

    private static IReadOnlyList<(int Reed, BenchLog Log, FindingNow Finding)> Found(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.Select(reed => (reed.Number, Log: material.LogOf(reed.Id))).SelectMany(reed => reed.Log.Findings
            .Where(finding => IsTheLesson(material, finding)).Select(finding => (reed.Number, reed.Log, finding))),
    ];

    private static bool IsTheLesson(LetterMaterial material, FindingNow finding) =>
        material.Thread.LessonKind is { } kind && finding.Finding.FindingKind == kind
        && finding.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork };
}
