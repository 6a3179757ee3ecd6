namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>One segment, as the rules read it and as the judge sees it.</summary>
/// <param name="Before">What was understood before it.</param>
/// <param name="Ruled">What was understood with it, by the rules.</param>
/// <param name="Opinion">What the judge thinks.</param>
internal sealed record Sight(Course Before, Course Ruled, Opinion Opinion)
{
    private List<string>? circumstances;

    /// <summary>A segment with the rules’ reading of it, as this judge sees it.</summary>
    internal static Sight Of(Course before, Course ruled, Judge judge) => new(before, ruled, judge.Of(before, ruled));

    /// <summary>What the rules made of the segment: a kind of entry, or nothing new.</summary>
    internal string Said { get; } = SaidBy(Before, Ruled);

    /// <summary>Which finding, test or work the rules made of it, if any.</summary>
    internal string? What { get; } = Ruled.Drafts.LastOrDefault(draft => draft.Head >= Before.At)?.Slots is { } slots ? slots.Kind ?? slots.Test?.ToString() : null;

    /// <summary>Which of the rules’ readers took it.</summary>
    internal string Way => Ruled.Way;

    /// <summary>Whether its sentence has an entry already, or it is all there is.</summary>
    internal string Standing => Before.LastInSentence is not null ? "in" : Before.At + 1 >= Before.Segments.Count && Before.Drafts.Count == 0 ? "only" : "none";

    /// <summary>True where the words say that nothing was done here: a plan, a question, a condition, another’s deed, a denial.</summary>
    internal bool IsOnlyTalkedOf => Before.Segment is var segment && (Way is "Question" || segment.Word(segment.First) is "after" or "before" or "until" || Moods.IsIntention(segment) || (Before.Carried is not Mood.None && Before.LastInSentence is null or { Kind: EntryKind.Note })
        || Moods.Of(Before.Copy(), segment, Moods.Head(segment)) is not (Mood.Done or Mood.Unsure));

    /// <summary>True where the words name a part of the reed, an amount or something that is done to reeds.</summary>
    internal bool NamesWork => Before.Segment is var segment && segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Stroke or Cat.Mm or Cat.Tenth or Cat.Thing
        || item.Cat is Cat.Verb && Moods.Action(item) is not ("light" or "take" or "other" or "harm" or "keepoff" or "fit" or "draw" or "realign" or "wait" or "open" or "press"));

    /// <summary>How the segment stands, apart from its words.</summary>
    internal IReadOnlyList<string> Circumstances => circumstances ??= Stand();

    private List<string> Stand()
    {
        var segment = Before.Segment;
        var words = Enumerable.Range(segment.First, segment.End - segment.First).Count(at => segment.Tokens[at].Kind is TokenKind.Word or TokenKind.Number);
        var said = Before.LastInSentence?.Kind.ToString() ?? "none";
        List<string> stand =
        [
            $"best {Opinion.Best(Questions.Kind)} {Said}",
            $"joint {segment.Joint} {said}",
            $"size {Math.Min(words, 6)} {said}",
            $"head {(Moods.Head(segment) is { } head ? Moods.Form(head) : '-')}",
            $"carried {Before.Carried} {said}",
            $"last {Before.Last?.Kind}",
            $"trade {Math.Min(segment.Items.Count(item => item.Cat is Cat.Zone or Cat.Region or Cat.Quality or Cat.Good or Cat.Test or Cat.Verb or Cat.Stroke or Cat.Lean or Cat.Leave or Cat.Stop or Cat.Verdict or Cat.Ended or Cat.Risk), 3)}",
            IsOnlyTalkedOf ? "talked" : NamesWork ? "work" : "other",
            Before.At + 1 >= Before.Segments.Count ? "end" : Before.Segments[Before.At + 1].Sentence == segment.Sentence ? "goes on" : "full stop",
        ];
        if (segment.Asked)
        {
            stand.Add("asked");
        }

        return stand;
    }

    /// <summary>What the rules made of a segment: a kind of entry, or nothing new.</summary>
    internal static string SaidBy(Course before, Course ruled) => ruled.Drafts.LastOrDefault(draft => draft.Head >= before.At) is { } draft ? Name(draft.Kind)
        : ruled.Noted.Contains(before.At) ? Name(EntryKind.Note) : Judge.Nothing;

    /// <summary>A kind of entry by its small name.</summary>
    internal static string Name(EntryKind kind) => kind is EntryKind.FindingEnded ? "ended" : kind.ToString().ToLowerInvariant();
}
