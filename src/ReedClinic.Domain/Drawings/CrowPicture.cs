using System.Text.Json.Serialization;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Drawings;

/// <summary>A crow as it was heard.</summary>
/// <param name="Pass">The pass it belongs to; 0 is as it arrived.</param>
/// <param name="Low">The flatter end of what was heard, in cents from the target.</param>
/// <param name="High">The sharper end; the same where one pitch was heard.</param>
public sealed record CrowHeard(int Pass, double Low, double High)
{
    /// <summary>Whether it was measured from a recording, and not said.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool IsMeasured { get; init; }

    /// <summary>The middle of what was heard.</summary>
    public double Middle => (Low + High) / 2;
}

/// <summary>What was done between two crows.</summary>
/// <param name="Work">In a few words each.</param>
/// <param name="Change">How far the crow moved, in words.</param>
/// <param name="Sentence">Both in a sentence.</param>
/// <param name="HasGap">Whether not every pass in between was heard.</param>
public sealed record CrowMove(IReadOnlyList<string> Work, string Change, string Sentence, bool HasGap);

/// <summary>A reed's crow through the work, as bench and letter have it: numbers and words alone, which <see cref="CrowSketch"/> lays out.</summary>
/// <param name="Note">The note that it is compared with.</param>
/// <param name="A4">What the player tunes to, in hertz; null where it isn’t known any more.</param>
/// <param name="Sentence">The whole in a sentence.</param>
/// <param name="Heard">The crows, in order; at least one.</param>
/// <param name="Moves">What was done from each crow to the next.</param>
public sealed record CrowPicture(string Note, double? A4, string Sentence, IReadOnlyList<CrowHeard> Heard, IReadOnlyList<CrowMove> Moves)
{
    /// <summary>What was measured beside what was said, in the same passes; null for nothing.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public IReadOnlyList<CrowHeard>? Beside { get; init; }

    /// <summary>The picture of a story; null when no pitch was said in it.</summary>
    /// <param name="story">The story.</param>
    /// <param name="target">What the crow is compared with.</param>
    public static CrowPicture? Of(CrowStory story, CrowTarget target)
    {
        ArgumentNullException.ThrowIfNull(story);
        return story.Sentence is not { } sentence ? null : new(
            target.PitchClass.Name,
            target.Tuning.A4.Value,
            sentence,
            [.. story.Points.Where(point => point.Cents is not null).Select(Drawn)],
            [.. story.Steps.Select(step => new CrowMove(step.Work, CentsWords.Change(step.Change), step.Sentence, step.HasGap))])
        {
            Beside = story.Beside.Count == 0 ? null : [.. story.Beside.Select(Drawn)],
        };
    }

    private static CrowHeard Drawn(CrowPoint point) => new(point.Pass, point.Cents!.Value.Low.Value, point.Cents.Value.High.Value) { IsMeasured = point.IsMeasured };
}
