namespace ReedClinic.Domain.Drawings;

/// <summary>Lays a crow’s way out, for bench, letter and paper alike: shapes with names, and words.</summary>
public static class CrowSketch
{
    private const string Title = "The crow through the work";

    /// <summary>Draws it.</summary>
    /// <param name="picture">What was heard and done.</param>
    /// <param name="show">What the drawing shows of it.</param>
    public static Sketch Of(CrowPicture picture, CrowShow show)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(show);
        var (height, parts) = show.Run == CrowRun.Across ? new CrowAcross(picture, show).Draw() : new CrowDown(picture, show).Draw();
        return new Sketch(show.Width, height, Title, string.Join(". ", picture.Moves.Select(move => move.Sentence).Prepend(picture.Sentence)) + ".", parts) { Type = show.Type };
    }

    /// <summary>Whether a drawing that runs to the right says all that a wider one does: what was done over its step, and every pass by its name.</summary>
    /// <param name="picture">What was heard and done.</param>
    /// <param name="show">What the drawing shows of it.</param>
    public static bool HasRoom(CrowPicture picture, CrowShow show)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(show);
        return new CrowAcross(picture, show) is { HasRoom: true, IsNarrow: false };
    }

    /// <summary>What was done on each step and what it did, each with its pass.</summary>
    /// <param name="picture">What was heard and done.</param>
    /// <param name="show">What the drawing shows of it.</param>
    public static IReadOnlyList<string> Steps(CrowPicture picture, CrowShow show)
    {
        ArgumentNullException.ThrowIfNull(picture);
        ArgumentNullException.ThrowIfNull(show);
        return [.. picture.Moves.Select((move, index) => $"{Pass(picture.Heard[index + 1], show)}: {move.Sentence}")];
    }

    /// <summary>What of the things that want a word of explanation is on a drawing.</summary>
    /// <param name="picture">What was heard and done.</param>
    public static CrowKeys Shown(CrowPicture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        return new CrowAcross(picture, CrowShow.Letter).Shown;
    }

    /// <summary>The name of a crow by its pass.</summary>
    internal static string Pass(CrowHeard heard, CrowShow show) => heard.Pass == 0 ? show.Arrival : FormattableString.Invariant($"pass {heard.Pass}");

    /// <summary>Whether a crow has no label of its own, because the one before it is of the same pass.</summary>
    internal static bool IsSamePass(CrowPicture picture, int index) => index > 0 && picture.Heard[index - 1].Pass == picture.Heard[index].Pass;
}
