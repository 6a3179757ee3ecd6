namespace ReedClinic.Web.Features.Bench.Sound;

/// <summary>The words of this folder: see the resource file beside it.</summary>
public sealed class SoundText;
