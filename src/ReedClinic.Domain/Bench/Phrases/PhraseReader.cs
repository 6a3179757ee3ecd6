using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>
/// Reads what a teacher types or says at the bench. What was done is told from what is only talked of: in doubt it is a
/// remark, so that the log never says that something was done that wasn't.
/// </summary>
public static class PhraseReader
{
    /// <summary>The longest phrase that is read; what goes beyond is left over.</summary>
    public const int LongestPhrase = 2000;

    /// <summary>Reads a phrase.</summary>
    /// <param name="text">What was typed or said.</param>
    /// <param name="context">What stands on this reed.</param>
    /// <returns>What was understood; every visible character is in an entry's span or left over.</returns>
    public static PhraseReading Read(string text, PhraseContext context) => Read(text, context, Judge.Taught);

    /// <summary>Reads a phrase with this judge beside the rules, or by the rules alone.</summary>
    internal static PhraseReading Read(string text, PhraseContext context, Judge? judge)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(context);
        var read = text.Length > LongestPhrase ? text[..LongestPhrase] : text;
        var tokens = Tokenizer.Cut(read);
        if (tokens.Count == 0)
        {
            return Reading.Of(text, [], null);
        }

        if (judge is not null)
        {
            if (text.Length <= LongestPhrase && RightCommand.Kept(text, tokens) is { } command)
            {
                return new PhraseReading(text, [command], []);
            }

            if (LeadTakenBack.Count(tokens) is > 0 and var lead)
            {
                var behind = Read(text, tokens[lead..], context, judge);
                return LeadTakenBack.IsHalf(behind, context) ? new PhraseReading(text, [LeadTakenBack.Whole(text, tokens)], []) : behind with { Entries = [LeadTakenBack.Kept(text, tokens[..lead]), .. behind.Entries] };
            }

            Ish.Quiet(tokens);
            NoteAhead.Quiet(tokens);
            SaidInPassing.Quiet(tokens);
            Bounds.Quiet(tokens);
            Sparing.Quiet(tokens);
            BesideSpine.Quiet(tokens);
            ToldBeside.Quiet(tokens);
        }

        return Read(text, tokens, context, judge);
    }

    private static PhraseReading Read(string text, List<Token> tokens, PhraseContext context, Judge? judge)
    {
        var course = Run(tokens, context, judge);
        var reading = Reading.Of(text, course.Segments, course, tokens[0].Start);
        return BarePitch.Read(text, tokens, context, reading.Entries) is { } pitch ? new PhraseReading(text, [pitch], []) : reading;
    }

    /// <summary>Goes through the segments once.</summary>
    internal static Course Run(List<Token> tokens, PhraseContext context, Judge? judge, Action<Sight>? watch = null, Func<Sight, string>? choose = null, Judge? cutter = null)
    {
        var course = new Course(Splitter.Cut(tokens, Scanner.Scan(tokens), cutter ?? judge), new Before(context.Log)) { A4 = context.Tuning.A4.Value };
        for (course.At = 0; course.At < course.Segments.Count; course.At++)
        {
            course = Arbiter.Read(course, judge, Rules.Read, watch, choose);
        }

        Corrections.Keep(course);
        Inquiries.Keep(course);
        Trials.Keep(course);
        if (judge is not null)
        {
            NotWork.Keep(course);
        }

        KeepUnnamed(course);
        KeepFromTying(course);
        DropAsides(course);
        Standing.Settle(course);
        Reasons.Keep(course);
        Doubles.Join(course, judge);
        DropForeignSteps(course);
        Opposites.Keep(course);
        Sagging.Keep(course);
        Grumbling.Keep(course);
        if (judge is not null)
        {
            HoldToWords(course);
        }

        return course;
    }

    // What the judge made of the words is held to them once more.
    private static void HoldToWords(Course course)
    {
        Corrections.KeepAlone(course);
        Likelihood.Settle(course);
        Protections.Keep(course);
        Nearers.Drop(course);
        Unsaid.Keep(course);
        SaidOtherwise.Keep(course);
        Modals.Keep(course);
        Misplaced.Keep(course);
        Betters.Keep(course);
        Hairs.Keep(course);
        TakenBack.Keep(course);
        Unmeant.Keep(course);
        Bounds.Keep(course);
        Likelihood.Join(course);
        BareCount.Keep(course);
        Crumbs.Keep(course);
    }

    /// <summary>A word of another test’s scale says nothing of this one.</summary>
    private static void DropForeignSteps(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Slots is { Test: { } test, Step: { } step } && !TestScale.Of(test).Steps.Contains(step)))
        {
            draft.Slots = draft.Slots with { Step = null };
        }
    }

    /// <summary>A deed that has no name and no place is in doubt: it is kept as a note.</summary>
    private static void KeepUnnamed(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, ZoneSaid: false, Slots: { Kind: "something-else", Zone: Reeds.Zone.WholeReed } } && !IsOffTheSides(course.Segments[draft.Head], draft)))
        {
            draft.Kind = EntryKind.Note;
            draft.Slots = ReadSlots.None;
            draft.Doubts.Clear();
            draft.Doubts.Add(new Doubt("kind", "unsure what was done and where, so it is kept as a note"));
        }
    }

    // “Two off each side”: strokes for certain, and only their place isn’t.
    private static bool IsOffTheSides(Segment segment, Draft draft) => draft.Slots.Strokes is not null && segment.Has(Cat.Off) && segment.Has(Cat.Side);

    /// <summary>“Two off each side” after the thread was spoken of: strokes take cane and tie nothing; of which part isn’t known.</summary>
    private static void KeepFromTying(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots: { Kind: "retie", Strokes: not null } }))
        {
            draft.Slots = draft.Slots with { Kind = "something-else", Zone = Reeds.Zone.WholeReed };
            draft.HasAside = true;
            draft.Doubts.Add(new Doubt("zone", "strokes, and of which part wasn’t said"));
        }
    }

    /// <summary>“Short scrape this one, so I scraped the base of the lay”: a reason in a sentence that has an entry is none of its own.</summary>
    private static void DropAsides(Course course)
    {
        for (var i = course.Drafts.Count - 2; i >= 0; i--)
        {
            var (draft, next) = (course.Drafts[i], course.Drafts[i + 1]);
            if (draft is { Kind: EntryKind.Note } && next.Kind is EntryKind.Finding && next.Sentence == draft.Sentence && next.First == draft.Last + 1 && course.Segments[next.First].Joint is "," && course.Segments[draft.First].Has(Cat.Other) && PlaceReader.Read(course.Segments[next.First]).Count == 0)
            {
                course.Drafts.RemoveAt(i);
                continue;
            }

            if (draft is { Kind: EntryKind.Note, IsLoose: true } && next.Kind is not EntryKind.Note && next.Sentence == draft.Sentence && next.First == draft.Last + 1)
            {
                course.Drafts.RemoveAt(i);
            }
        }
    }
}
