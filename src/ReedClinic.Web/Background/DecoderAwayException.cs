namespace ReedClinic.Web.Background;

/// <summary>The decoder that the studio named can’t be started: that is the studio’s to mend, and no fault of a sound.</summary>
/// <param name="message">What is wrong, in words that name no sound.</param>
/// <param name="inner">What the machine said; null where it said nothing.</param>
public sealed class DecoderAwayException(string message, Exception? inner = null) : Exception(message, inner);
