using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recordings;

/// <summary>How far the reading of a sound has come.</summary>
/// <param name="Reed">Of which reed the sound is.</param>
/// <param name="State">How far.</param>
public sealed record ReadingStateView(ReedId Reed, ReadingState State);

/// <summary>A sound that was read.</summary>
/// <param name="Recording">The sound.</param>
/// <param name="Kind">What is played; null where no tone is heard.</param>
/// <param name="Figures">The numbers.</param>
/// <param name="Series">From moment to moment; null where that can’t be drawn any more.</param>
public sealed record ReadSoundView(RecordingView Recording, SoundKind? Kind, ReadingFigures Figures, SoundSeries? Series);

/// <summary>What a sound says, and what it can be compared with.</summary>
/// <param name="Recording">The sound.</param>
/// <param name="Batch">The batch of its reed.</param>
/// <param name="ReedNumber">The reed’s number there.</param>
/// <param name="State">How far reading has come.</param>
/// <param name="Version">What a correction has to bring along.</param>
public sealed record SoundReadingView(RecordingView Recording, BatchCode Batch, int ReedNumber, ReadingState State, Guid Version)
{
    /// <summary>Why nothing can be read; null unless that is so.</summary>
    public SoundTrouble? Trouble { get; init; }

    /// <summary>The numbers and moments; null until it was read.</summary>
    public ReadSoundView? Read { get; init; }

    /// <summary>What seemed to be played.</summary>
    public SoundGuess? Guess { get; init; }

    /// <summary>True when somebody said what is played.</summary>
    public bool IsKindSaid { get; init; }

    /// <summary>True where what is played is a guess and no more, so that nothing is judged by it.</summary>
    public bool IsUnsure => !IsKindSaid && Read is { Kind: not null } read && Guess is { } guess && guess.Sureness(read.Figures.Seconds) == GuessSureness.Perhaps;

    /// <summary>True when whoever asked is the student, to whom the reed belongs.</summary>
    public bool IsOwn { get; init; }

    /// <summary>True when there is a spectrogram.</summary>
    public bool HasPicture { get; init; }

    /// <summary>What the student tunes to; null when they never said.</summary>
    public Tuning? TunesTo { get; init; }

    /// <summary>Whether whoever asked may say what is played.</summary>
    public bool MayCorrect { get; init; }

    /// <summary>The other sounds of this reed that were read and that this actor hears, the oldest first.</summary>
    public IReadOnlyList<ReadSoundView> Others { get; init; } = [];

    /// <summary>What its pitch is compared with.</summary>
    public CrowTarget Target => CrowTarget.OnC(TunesTo ?? Tuning.Standard);
}
