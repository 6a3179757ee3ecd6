using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>The drawings of a letter: each reed, its crow's way, the common lesson, and the stroke of the knife.</summary>
public static class LetterPictures
{
    /// <summary>One reed with what stands on it today; null when nothing is marked.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="reed">The reed.</param>
    public static Sketch? Reed(LetterDraft letter, LetterReed reed)
    {
        ArgumentNullException.ThrowIfNull(letter);
        ArgumentNullException.ThrowIfNull(reed);
        return reed.Marks.Count == 0 ? null : ReedSketch.Of(reed.Marks, Style(letter), letter.Instrument, FormattableString.Invariant($"Reed {reed.Number}"));
    }

    /// <summary>Where the common lesson was found, on a reed that stands for all of them; null when it has no place.</summary>
    /// <param name="letter">The letter.</param>
    public static Sketch? Lesson(LetterDraft letter)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return letter.LessonMarks.Count == 0 ? null : ReedSketch.Of(letter.LessonMarks, Style(letter), letter.Instrument, "Where to look on your next reed", near: true);
    }

    /// <summary>A mark's line in the list beside a drawing of this letter.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="mark">The mark.</param>
    public static string Line(LetterDraft letter, ReedMark mark)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return ReedSketch.Line(mark, Style(letter), letter.Instrument);
    }

    /// <summary>The stroke against what the lesson is about; null where no knife is wanted.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="show">For what place it is drawn.</param>
    public static Sketch? Stroke(LetterDraft letter, StrokeShow show)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return StrokeSketch.Of(letter.LessonKind, Style(letter), letter.Instrument, show);
    }

    /// <summary>A reed's crow through the work; null where its letter doesn't tell how it plays now, or its crow was heard only once.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="show">What the drawing shows. Each explains itself: a reed is read about by itself, perhaps on a page of its own.</param>
    public static Sketch? Crow(LetterDraft letter, LetterReed reed, CrowShow show)
    {
        ArgumentNullException.ThrowIfNull(letter);
        ArgumentNullException.ThrowIfNull(reed);
        return HasCrow(letter, reed) ? CrowSketch.Of(reed.Crow!, show with { Keys = CrowSketch.Shown(reed.Crow!) }) : null;
    }

    /// <summary>What a letter says below the drawing of a crow’s way, one thing a line: each step with its pass, and once in a letter what “A 442 Hz” means.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="reed">A reed whose crow is drawn.</param>
    public static IReadOnlyList<string> CrowSaid(LetterDraft letter, LetterReed reed)
    {
        ArgumentNullException.ThrowIfNull(letter);
        ArgumentNullException.ThrowIfNull(reed);
        if (reed.Crow is not { } crow)
        {
            return [];
        }

        var isFirst = !letter.Reeds.TakeWhile(other => other.Id != reed.Id).Any(other => HasCrow(letter, other) && other.Crow!.A4 is not null);
        return
        [
            .. CrowSketch.Steps(crow, CrowShow.Letter),
            .. crow.A4 is { } a4 && isFirst ? [string.Create(CultureInfo.InvariantCulture, $"“A {a4:0.#} Hz” is the A to tune to: {a4:0.#} swings of the air in a second")] : Array.Empty<string>(),
        ];
    }

    /// <summary>The same in whole sentences, one after another, for paper; empty where no crow is drawn.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="reed">A reed whose crow is drawn.</param>
    public static string CrowTold(LetterDraft letter, LetterReed reed) => string.Join(' ', CrowSaid(letter, reed).Select(Prose.Sentence));

    /// <summary>A reed's crow through the work, as the letter keeps it.</summary>
    internal static CrowPicture? Crow(LetterMaterial material, Reed reed)
    {
        var story = CrowStory.Of(material.LogOf(reed.Id), material.Batch.CrowTarget);
        return CrowPicture.Of(story, material.Batch.CrowTarget) is not { Moves.Count: > 0 } crow ? null
            : crow with
            {
                Sentence = story.Since.Count == 0 ? crow.Sentence : crow.Sentence + ". After the last work it was not heard again",
                Moves = [.. crow.Moves.Zip(story.Steps).Select(pair => pair.First with { Change = Drawn(pair.Second, story, material.LogOf(reed.Id)), Sentence = Told(pair.Second, story, material.LogOf(reed.Id)) })],
            };
    }

    // Under what was done in short, on the drawing: as in the sentence, what is in doubt is only what was heard later.
    private static string Drawn(CrowStep step, CrowStory story, BenchLog log) =>
        (CrowDoubt.IsOf(step, story, log) ? "when heard again: " : "") + CentsWords.Change(step.Change);

    // A step in a whole sentence: the drawing has it in short.
    private static string Told(CrowStep step, CrowStory story, BenchLog log)
    {
        var (from, to) = (story.Points[step.From].Pass, story.Points[step.To].Pass);
        List<string> verbs =
        [
            .. log.Work.Where(work => step.Work.Count > 0 && work.Pass > from && work.Pass <= to).OrderBy(work => work.Sequence)
                .Select(work => AdjustmentCatalogue.Find(work.Now.AdjustmentKind) is not null ? Pattern.Fill(WorkVerbs.Of(work.Now), _ => 0, past: false) : "worked on it").Distinct(),
        ];
        var change = CentsWords.Told(step.Change);
        return verbs.Count == 0 ? $"When I heard it again, {change}"
            : CrowDoubt.IsOf(step, story, log) ? $"I {Prose.List(verbs)}; when I heard it again, {change}"
            : $"I {Prose.List(verbs)}, and after that {change}";
    }

    /// <summary>Each place at which the lesson was found, with the reeds that had it.</summary>
    internal static IReadOnlyList<ReedMark> LessonMarks(LetterMaterial material)
    {
        if (material.Thread.LessonKind is not { } kind || FindingCatalogue.Find(kind) is not { } known)
        {
            return [];
        }

        return
        [
            .. material.Batch.Reeds
                .SelectMany(reed => material.LogOf(reed.Id).Findings
                    .Where(finding => finding.Finding is { Character: FindingCharacter.Fault } fault && fault.FindingKind == kind && fault.Arose != Arose.CausedByTheWork)
                    .Select(finding => (finding.Finding.Place, reed.Number, IsSuspected: finding.Finding.Certainty == Certainty.Suspected)))
                .GroupBy(found => found.Place)
                .OrderByDescending(place => place.DistinctBy(found => found.Number).Count())
                .Select(place => new ReedMark(place.Key, MarkKind.Fault, LetterMarks.Beside(place.Key.Zone, PlainNames.Of(known.Id)), Reeds([.. place.Select(found => found.Number).Distinct().Order()]))
                {
                    Suspected = place.All(found => found.IsSuspected),
                }),
        ];
    }

    private static bool HasCrow(LetterDraft letter, LetterReed reed) =>
        reed.Crow is not null && letter.Blocks.Any(block => block.Reed == reed.Id && block is { Kind: BlockKind.ReedNow, Rows.Count: > 0 });

    private static string Reeds(IReadOnlyList<int> numbers) => numbers.Count == 1
        ? "reed " + Prose.Number(numbers[0])
        : "reeds " + Prose.List([.. numbers.Select(Prose.Number)]);

    private static ScrapeStyle Style(LetterDraft letter) => letter.Scrape ?? ScrapeStyle.LongScrape;
}
