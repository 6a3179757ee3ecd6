using System.Globalization;
using Microsoft.Extensions.Localization;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Recordings;
using ReedClinic.Web.Shared;

namespace ReedClinic.Web.Features.Readings;

/// <summary>How a sound is called, so that two of one reed are told apart.</summary>
public static class TakeName
{
    private const int Words = 60;

    /// <summary>What it shows: “as it came”; of what was made before it was posted, “at home, before the post”, and to the student “before you post it”.</summary>
    /// <param name="T">The words.</param>
    /// <param name="view">The page’s sound, which says who asks.</param>
    /// <param name="sound">The sound that is called so.</param>
    public static string Of(IStringLocalizer<ReadingsText> T, SoundReadingView view, RecordingView sound)
    {
        ArgumentNullException.ThrowIfNull(T);
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(sound);
        return sound.FromStudio || sound.Kind != RecordingKind.ArrivalSound ? T[$"Of{sound.Kind}"] : T[view.IsOwn ? "OfOwnArrivalSound" : "OfHomeArrivalSound"];
    }

    /// <summary>That, with its place among the sounds of the reed that were read, the oldest being 1, who gave it, when, and the words given to it.</summary>
    /// <param name="T">The words.</param>
    /// <param name="view">The page’s sound, which says who asks.</param>
    /// <param name="sound">The sound that is called so.</param>
    /// <param name="time">Whose clock is there.</param>
    public static string Of(IStringLocalizer<ReadingsText> T, SoundReadingView view, RecordingView sound, TimeProvider time)
    {
        var what = Of(T, view, sound);
        var number = 1 + view.Others.Select(one => one.Recording).Append(view.Recording).Count(one => one.Id != sound.Id && (one.RecordedAt, one.Id.Value).CompareTo((sound.RecordedAt, sound.Id.Value)) < 0);
        var by = T[$"By{sound.By}"];
        var at = time.There(sound.RecordedAt).ToString("d MMM HH:mm", CultureInfo.GetCultureInfo("en-GB"));
        var name = T["Take", number, what, by, at];
        return sound.Words is { Length: > 0 } words ? T["TakeWithWords", name, words.Length > Words ? words[..Words].TrimEnd() + "…" : words] : name;
    }
}
