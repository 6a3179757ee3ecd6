namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>What became of a file: a clip, or a reason. There is no third.</summary>
public abstract record DecodeResult
{
    private DecodeResult()
    {
    }

    /// <summary>It was read.</summary>
    /// <param name="Clip">The sound.</param>
    public sealed record Done(SoundClip Clip) : DecodeResult;

    /// <summary>It wasn’t.</summary>
    /// <param name="Reason">Why.</param>
    /// <param name="Form">What it is, where that can be told.</param>
    public sealed record Refused(DecodeRefusal Reason, SoundForm? Form = null) : DecodeResult;
}
