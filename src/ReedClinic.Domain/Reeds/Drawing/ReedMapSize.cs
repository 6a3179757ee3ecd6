namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>How large a reed map is drawn, and with what round it.</summary>
public enum ReedMapSize
{
    /// <summary>Large, with numbers, labels where there is room, and the list.</summary>
    Bench,

    /// <summary>As an icon in a list: the two blades and their marks.</summary>
    Icon,

    /// <summary>For paper: as large as the bench's, legible without colour.</summary>
    Print,
}
