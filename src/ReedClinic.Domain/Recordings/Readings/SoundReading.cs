namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>How far reading a clip has come.</summary>
public enum ReadingState
{
    /// <summary>Nobody has begun.</summary>
    Waiting,

    /// <summary>It is being read.</summary>
    BeingRead,

    /// <summary>It was read.</summary>
    Read,

    /// <summary>Nothing can be read from it.</summary>
    CannotBeRead,
}

/// <summary>What was found in a clip: all at once, so that a reading is whole or isn’t there.</summary>
/// <param name="Figures">The numbers.</param>
/// <param name="Series">From moment to moment.</param>
/// <param name="Picture">The spectrogram, as a PNG with a palette; at most <see cref="SoundReading.LargestPicture"/> bytes.</param>
/// <param name="Guess">What seems to be played; null where no tone is heard.</param>
public sealed record SoundFindings(ReadingFigures Figures, SoundSeries Series, byte[] Picture, SoundGuess? Guess);

/// <summary>What a kept sound says: one for each recording, begun in the save that keeps it, gone with it.</summary>
public sealed class SoundReading
{
    /// <summary>The largest spectrogram that is kept, in bytes.</summary>
    public const int LargestPicture = 61_440;

    private SoundReading()
    {
    }

    /// <summary>Begins: it waits.</summary>
    /// <param name="recording">Of which recording.</param>
    /// <param name="at">When it was asked for.</param>
    public SoundReading(RecordingId recording, DateTimeOffset at) => (Recording, AskedAt) = (recording, at);

    /// <summary>Of which recording.</summary>
    public RecordingId Recording { get; private set; }

    /// <summary>How far it has come.</summary>
    public ReadingState State { get; private set; }

    /// <summary>Why nothing can be read; null unless that is so.</summary>
    public SoundTrouble? Trouble { get; private set; }

    /// <summary>What seemed to be played; null until it was read, and where no tone is heard.</summary>
    public SoundKind? GuessedKind { get; private set; }

    /// <summary>How much of the weight that guess has, in hundredths.</summary>
    public int? GuessHundredths { get; private set; }

    /// <summary>What is played, as somebody said who knows.</summary>
    public SoundKind? SaidKind { get; private set; }

    /// <summary>The numbers; null until it was read.</summary>
    public ReadingFigures? Figures { get; private set; }

    /// <summary>From moment to moment, as <see cref="SoundSeries.ToBytes"/> writes it; null until it was read.</summary>
    public byte[]? Series { get; private set; }

    /// <summary>The spectrogram; null until it was read.</summary>
    public byte[]? Picture { get; private set; }

    /// <summary>When it was asked for.</summary>
    public DateTimeOffset AskedAt { get; private set; }

    /// <summary>When it ended; null until then.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>What is played: as somebody said, else as it was guessed.</summary>
    public SoundKind? Kind => SaidKind ?? GuessedKind;

    /// <summary>Whether it came to an end, of whatever kind.</summary>
    public bool HasEnded => State is ReadingState.Read or ReadingState.CannotBeRead;

    /// <summary>Somebody reads it now. What ended stays as it is.</summary>
    public void Begin() => State = HasEnded ? State : ReadingState.BeingRead;

    /// <summary>It was read. What ended stays as it is: a worker that was slow changes nothing.</summary>
    /// <param name="found">What was found.</param>
    /// <param name="at">When.</param>
    public void Keep(SoundFindings found, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(found);
        if (HasEnded)
        {
            return;
        }

        (State, EndedAt, Figures, Series) = (ReadingState.Read, at, found.Figures, found.Series.ToBytes());
        Picture = found.Picture.Length <= LargestPicture ? found.Picture : null;
        (GuessedKind, GuessHundredths) = (found.Guess?.Kind, found.Guess is { } guess ? (int)Math.Round(100 * Math.Clamp(guess.Share, 0, 1)) : null);
    }

    /// <summary>Nothing can be read from it. What ended stays as it is.</summary>
    /// <param name="why">Why not.</param>
    /// <param name="at">When that was known.</param>
    public void GiveUp(SoundTrouble why, DateTimeOffset at)
    {
        if (!HasEnded)
        {
            (State, Trouble, EndedAt) = (ReadingState.CannotBeRead, why, at);
        }
    }

    /// <summary>Asks again for what wasn’t read for its form alone, once that form is read. What ended otherwise stays as it is.</summary>
    /// <param name="at">When.</param>
    public void AskAgain(DateTimeOffset at)
    {
        if (State == ReadingState.CannotBeRead && Trouble == SoundTrouble.FormNotRead)
        {
            (State, Trouble, EndedAt, AskedAt) = (ReadingState.Waiting, null, null, at);
        }
    }

    /// <summary>Says what is played.</summary>
    /// <param name="kind">What it is.</param>
    /// <exception cref="InvalidOperationException">It wasn’t read: there is nothing to be corrected.</exception>
    public void Correct(SoundKind kind) =>
        SaidKind = State == ReadingState.Read ? kind : throw new InvalidOperationException("Only what was read is corrected.");
}
