using Microsoft.Extensions.Localization;
using ReedClinic.Data.Letters;

namespace ReedClinic.Web.Features.Letters;

/// <summary>What is said to whoever kept words while somebody else did.</summary>
internal static class LetterClash
{
    /// <summary>That the letter was changed meanwhile, with who kept its newest words and when; without them where nobody did, or that account is gone.</summary>
    /// <param name="words">The words of letters.</param>
    /// <param name="now">The letter as it stands.</param>
    /// <param name="time">The clock.</param>
    public static string Clash(this IStringLocalizer<LetterText> words, LetterView now, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(now);
        return now.Versions is [{ SavedBy: { Length: > 0 } who, SavedAt: var at }, ..] ? words["ClashWith", who, LetterVersions.When(time, at)] : words["Clash"];
    }
}
