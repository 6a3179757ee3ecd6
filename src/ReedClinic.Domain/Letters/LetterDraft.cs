using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>A reed as the letter shows it.</summary>
/// <param name="Id">Which reed.</param>
/// <param name="Number">The number on its tag.</param>
/// <param name="HowToRecognise">How to tell it from the others.</param>
/// <param name="Marks">What the drawing of it shows.</param>
public sealed record LetterReed(ReedId Id, int Number, string HowToRecognise, IReadOnlyList<ReedMark> Marks)
{
    /// <summary>Its crow's way through the work; null when it was heard fewer than twice.</summary>
    public CrowPicture? Crow { get; init; }
}

/// <summary>A whole letter: what is drafted, saved, sent and drawn.</summary>
/// <param name="Batch">The batch it is about.</param>
/// <param name="Code">The batch's code.</param>
/// <param name="StudentName">To whom it is written.</param>
/// <param name="Signature">Who signs it.</param>
/// <param name="Scrape">How the reeds are scraped; null when not known.</param>
/// <param name="Reeds">The reeds, by number.</param>
/// <param name="Blocks">The blocks, in order.</param>
public sealed record LetterDraft(
    BatchId Batch,
    string Code,
    string StudentName,
    string Signature,
    ScrapeStyle? Scrape,
    IReadOnlyList<LetterReed> Reeds,
    IReadOnlyList<LetterBlock> Blocks)
{
    /// <summary>What the reeds are for, which gives the drawing its outline; null when not known.</summary>
    public Instrument? Instrument { get; init; }

    /// <summary>The studio that it comes from, as it was called then; null when that isn't known.</summary>
    public string? Studio { get; init; }

    /// <summary>The finding that the common lesson is about; null for a lesson in words alone, or none.</summary>
    public FindingKindId? LessonKind { get; init; }

    /// <summary>The lesson in the teacher’s words, where it is in words alone: the next letter may come back to it.</summary>
    public string? LessonWords { get; init; }

    /// <summary>Where the common lesson was found, for its picture.</summary>
    public IReadOnlyList<ReedMark> LessonMarks { get; init; } = [];

    /// <summary>How often other words were asked for, by the keys of the parts.</summary>
    public IReadOnlyDictionary<string, int> Turns { get; init; } = new Dictionary<string, int>();

    /// <summary>
    /// This fresh draft with what the teacher changed in an earlier one. Blocks that nobody touched follow the log; a
    /// changed block stays as it was left.
    /// </summary>
    /// <param name="saved">The earlier one; null for none.</param>
    public LetterDraft With(LetterDraft? saved)
    {
        if (saved is null)
        {
            return this;
        }

        var edited = saved.Blocks.Where(block => block.IsEdited).ToDictionary(block => block.Key);
        List<LetterBlock> blocks =
            [.. Blocks.Select(block => edited.TryGetValue(block.Key, out var left) ? left with { Rows = block.Rows } : block)];
        for (var place = 0; place < saved.Blocks.Count; place++)
        {
            var block = saved.Blocks[place];
            if (block is { IsEdited: true, Paragraphs.Count: > 0 } && !blocks.Any(other => other.Key == block.Key))
            {
                PutAfter(blocks, saved.Blocks.Take(place), block.AsOwnWords());
            }
        }

        return this with { Blocks = blocks };
    }

    // Behind the nearest of its old neighbours that is still there.
    private static void PutAfter(List<LetterBlock> blocks, IEnumerable<LetterBlock> before, LetterBlock block)
    {
        var at = before.Reverse().Select(other => blocks.FindIndex(known => known.Key == other.Key)).FirstOrDefault(found => found >= 0, -1);
        blocks.Insert(at + 1, block);
    }

    /// <summary>Whether words typed for a block have a place in this letter.</summary>
    /// <param name="key">The block's key.</param>
    public bool HasPlaceFor(string key) => Blocks.Any(block => block.Key == key) || LetterKeys.Empty(key, Reeds) is not null;

    /// <summary>This draft with other texts in some blocks.</summary>
    /// <param name="texts">The texts by the keys of their blocks; keys that no letter has are ignored.</param>
    /// <param name="composed">The draft as it would be composed now.</param>
    public LetterDraft EditedTo(IReadOnlyDictionary<string, string> texts, LetterDraft composed)
    {
        ArgumentNullException.ThrowIfNull(texts);
        ArgumentNullException.ThrowIfNull(composed);
        var fresh = composed.Blocks.ToDictionary(block => block.Key);
        List<LetterBlock> blocks =
        [
            .. Blocks.Select(block => texts.TryGetValue(block.Key, out var text)
                ? block.EditedTo(text, fresh.GetValueOrDefault(block.Key) ?? block.AsNothing())
                : block),
        ];
        foreach (var (key, text) in texts.Where(text => !Blocks.Any(block => block.Key == text.Key)))
        {
            if (LetterKeys.Empty(key, Reeds) is { } empty && !string.IsNullOrWhiteSpace(text))
            {
                PutAfter(blocks, blocks.Where(block => LetterKeys.Before(block, empty)), empty.EditedTo(text, empty.AsNothing()));
            }
        }

        return this with { Blocks = blocks };
    }
}

/// <summary>What is still missing from a letter.</summary>
public enum GapKind
{
    /// <summary>A question of the student's that has no answer.</summary>
    UnansweredQuestion,

    /// <summary>What bothers a student of a reed, and nothing in its log answers.</summary>
    UnansweredComplaint,

    /// <summary>An answer that may leave half of its question open, or names a reed that isn’t to be played.</summary>
    AnswerFallsShort,

    /// <summary>A reed that lies here and has no verdict.</summary>
    ReedWithoutVerdict,

    /// <summary>A risk of which nobody has said whether it happened.</summary>
    OpenRisk,

    /// <summary>Work on a reed that goes beyond what the student had allowed; the letter tells why.</summary>
    WorkBeyondTheWish,

    /// <summary>Words that tell of work on a reed whose log holds none: the letter would say both.</summary>
    WorkNotInTheLog,

    /// <summary>A reed that wasn't tried again after the last work on it.</summary>
    NotTriedSinceTheWork,

    /// <summary>A reed that was put aside for now, and goes home so; the letter says it.</summary>
    PutAside,

    /// <summary>A part that was changed by hand says the opposite of what the log holds.</summary>
    WordsAgainstTheLog,

    /// <summary>Words at the bench that speak of the student as of a third person; the letter leaves them out.</summary>
    SpokenOfTheStudent,

    /// <summary>Words at the bench that are blunt about a reed or its maker; the letter leaves them out.</summary>
    BluntAtTheBench,

    /// <summary>Words at the bench that are short for whoever stands there; the letter leaves them out.</summary>
    ShorthandAtTheBench,

    /// <summary>A finding of which it was said that there was none; the letter says nothing of it.</summary>
    FindingTakenBack,

    /// <summary>An answer that gives leave for a knife, right beside the caution that asks to wait; the caution stays.</summary>
    AnswerAgainstTheCaution,

    /// <summary>A part that was changed by hand asks for a knife where the letter asks to wait, or for somebody beside it.</summary>
    WordsAgainstTheAdvice,

    /// <summary>A caution that was taken out of a part by hand.</summary>
    CautionTakenOut,

    /// <summary>What a student wrote of body, illness or dirt; the letter says the usual caution.</summary>
    SaidOfHarm,

    /// <summary>A reed that is given up, and nothing says why; what is said here the student reads.</summary>
    GivenUpWithoutWhy,

    /// <summary>A crow that stands where the work can hardly have brought it; the letter calls it no effect.</summary>
    CrowAgainstTheWork,

    /// <summary>A remark at the bench that praises the reed; the letter tells no remarks.</summary>
    PraiseNotInTheLetter,

    /// <summary>Nothing was said about what the reeds have in common.</summary>
    NoCommonLesson,

    /// <summary>A field of a teaching note that nothing filled; it isn't left open, but written.</summary>
    UnfilledField,

    /// <summary>A picture that there isn't; it isn't left open either.</summary>
    UnknownPicture,
}

/// <summary>Something that is missing: it can be mended or waived with a reason.</summary>
/// <param name="Key">Its lasting name within the letter.</param>
/// <param name="Kind">What is missing.</param>
/// <param name="Words">One sentence for the teacher.</param>
public sealed record LetterGap(string Key, GapKind Kind, string Words)
{
    /// <summary>The key of a question that has no answer.</summary>
    /// <param name="question">The question.</param>
    public static string KeyOf(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return "question-" + Prose.Number(question.Number);
    }

    /// <summary>The key of a verdict that is missing.</summary>
    /// <param name="reed">The reed.</param>
    public static string KeyOfVerdict(Reed reed)
    {
        ArgumentNullException.ThrowIfNull(reed);
        return "verdict-" + Prose.Number(reed.Number);
    }

    /// <summary>Whether it has to be mended in the letter's own words, and can't be left open.</summary>
    public bool IsInTheWords => Kind is GapKind.UnfilledField or GapKind.UnknownPicture;

    /// <summary>Whether the teacher is told of it, and the letter may go all the same, since it claims nothing by it.</summary>
    public bool IsToldOnly { get; init; }

    /// <summary>What may be the answer, by the log: it stands in the field, and is the teacher’s to keep or to change; null where nothing is proposed.</summary>
    public string? Proposed { get; init; }

    /// <summary>The reed it is about, if any.</summary>
    public ReedId? Reed { get; init; }

    /// <summary>The part of the letter it stands in, if it does.</summary>
    public string? Part { get; init; }

    /// <summary>The question that has no answer, if it is one.</summary>
    public QuestionId? Question { get; init; }
}
