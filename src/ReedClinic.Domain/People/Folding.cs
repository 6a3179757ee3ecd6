using System.Globalization;
using System.Text;

namespace ReedClinic.Domain.People;

/// <summary>
/// Text as it is searched and compared: small letters, no diacritics, single spaces. The app folds, because SQLite only
/// knows the letters of ASCII. Greek and Cyrillic stay Greek and Cyrillic: nothing is spelled over into Latin.
/// </summary>
public static class Folding
{
    /// <summary>Folds a name or another text that people search for.</summary>
    /// <param name="text">As it was written.</param>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var folded = new StringBuilder(text.Length);
        var gap = false;
        foreach (var letter in Sound(text).Normalize(NormalizationForm.FormKD).ToLowerInvariant().Normalize(NormalizationForm.FormKD))
        {
            if (char.IsWhiteSpace(letter))
            {
                gap = folded.Length > 0;
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(letter) is not UnicodeCategory.NonSpacingMark)
            {
                folded.Append(gap ? " " : "").Append(Plain(letter));
                gap = false;
            }
        }

        return folded.ToString();
    }

    /// <summary>
    /// Folds an e-mail address: no space around it, small letters, compatible forms made one. Diacritics stay, because
    /// they may tell two addresses apart.
    /// </summary>
    /// <param name="address">As it was written.</param>
    public static string OfEmail(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return Sound(address.Trim()).Normalize(NormalizationForm.FormKC).ToLowerInvariant();
    }

    // Half a surrogate pair and the reversed byte order mark can't be normalised; they are replaced, as an encoder would.
    private static string Sound(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)).Replace('\uFFFE', '\uFFFD');

    // Letters that Unicode doesn't take apart, but that people type as their plain neighbour.
    private static string Plain(char letter) => letter switch
    {
        'ß' => "ss",
        'æ' => "ae",
        'œ' => "oe",
        'ø' => "o",
        'đ' or 'ð' => "d",
        'ł' => "l",
        'þ' => "th",
        'ı' => "i",
        'ħ' => "h",
        'ŋ' => "n",
        'ς' => "σ",
        _ => letter.ToString(),
    };
}
