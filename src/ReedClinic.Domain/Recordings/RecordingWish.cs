using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recordings;

/// <summary>What somebody is about to send.</summary>
/// <param name="Reed">Of which reed.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Bytes">How large the file is.</param>
public sealed record RecordingWish(ReedId Reed, RecordingKind Kind, long Bytes)
{
    /// <summary>What is heard or seen in it, in words.</summary>
    public string? Words { get; init; }

    /// <summary>The pass it belongs to, if it is known.</summary>
    public PassId? PassId { get; init; }

    /// <summary>The place in the log at which it was made; null for where the log stands now.</summary>
    public int? AtSequence { get; init; }
}
