namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>
/// The reed seen from its end, as path data round its middle: about 1 mm high at a width of about 7, a lens of two parabolic arcs, as published
/// openings of some 4 2/3 square millimetres give.
/// </summary>
public static class EndArt
{
    /// <summary>The gap between the blades.</summary>
    public const string Gap = "M-56,0Q0,-17 56,0Q0,17 -56,0Z";

    /// <summary>The upper blade's edge.</summary>
    public const string Upper = "M-56,0Q0,-17 56,0L58,-1Q0,-24 -58,-1Z";

    /// <summary>The lower blade's edge.</summary>
    public const string Lower = "M-56,0Q0,17 56,0L58,1Q0,24 -58,1Z";
}
