using System.Globalization;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Intake;

/// <summary>
/// The short code on a slip, such as <c>7KP-W3MQ</c>: six characters and a check character, from 29 digits and letters
/// without vowels (so that it never spells a word), without 0 and 1.
/// </summary>
/// <remarks>
/// The check character is a weighted sum modulo a prime, the scheme of the ISBN-10 (ISO 2108, where the prime is 11): the
/// characters, numbered 0 to 28 and weighted 7, 6, 5, 4, 3, 2, 1 from the left, sum to a multiple of 29. Because 29 is
/// prime and the weights differ by less than 29, every single wrong character and every exchange of two characters,
/// neighbours or not, breaks the sum.
/// </remarks>
public readonly record struct BatchCode
{
    /// <summary>The characters that a code is made of.</summary>
    public const string Alphabet = "23456789BCDFGHJKLMNPQRSTVWXYZ";

    /// <summary>How many characters a code has, the check character included.</summary>
    public const int Length = 7;

    /// <summary>How many different codes there are.</summary>
    public const int HowMany = 29 * 29 * 29 * 29 * 29 * 29;

    private readonly string? _characters;

    private BatchCode(string characters) => _characters = characters;

    /// <summary>The seven characters without a hyphen, as they are stored.</summary>
    public string Value => _characters ?? "";

    /// <summary>A code from a number, so that chance stays outside: draw one below <see cref="HowMany"/>.</summary>
    /// <param name="number">From 0 to one less than <see cref="HowMany"/>.</param>
    public static BatchCode FromNumber(int number)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(number, HowMany);
        var characters = new char[Length];
        for (var place = Length - 2; place >= 0; place--)
        {
            characters[place] = Alphabet[number % Alphabet.Length];
            number /= Alphabet.Length;
        }

        characters[^1] = Alphabet[(Alphabet.Length - Sum(characters.AsSpan(0, Length - 1)) % Alphabet.Length) % Alphabet.Length];
        return new BatchCode(new string(characters));
    }

    /// <summary>A code as it was stored.</summary>
    /// <param name="stored">Seven characters.</param>
    /// <exception cref="FormatException">That is no code.</exception>
    public static BatchCode Stored(string stored) =>
        TryRead(stored) ?? throw new FormatException("That is no batch code.");

    /// <summary>Reads a code that somebody typed: small letters, spaces and hyphens do no harm.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="field">The form field that a problem names.</param>
    /// <returns>The code, or one problem that says which character is wrong where that can be told.</returns>
    public static Outcome<BatchCode> Read(string? typed, string field = "code")
    {
        var characters = Bare(typed);
        for (var place = 0; place < characters.Length; place++)
        {
            if (Strange(characters[place]) is { } hint)
            {
                return Refuse(field, string.Create(
                    CultureInfo.InvariantCulture, $"The {Ordinal(place + 1)} character, “{characters[place]}”, {hint}"));
            }
        }

        if (characters.Length != Length)
        {
            return Refuse(field, characters.Length == 0
                ? "Type the code from the slip: seven letters and digits, such as 7KP-W3MQ."
                : string.Create(CultureInfo.InvariantCulture, $"A code has seven characters; this one has {characters.Length}."));
        }

        return TryRead(characters) is { } code
            ? new Outcome<BatchCode>.Done(code)
            : Refuse(field, "One character of this code is wrong, or two are exchanged. Please compare it with the slip.");
    }

    /// <summary>
    /// Every code that is one slip of the finger away from what was typed: one character wrong, two neighbours exchanged,
    /// one left out or one too many. At most a few dozen, so they can be looked up among the codes that exist.
    /// </summary>
    /// <param name="typed">What was typed.</param>
    public static IReadOnlyList<BatchCode> NearTo(string? typed)
    {
        var characters = Bare(typed);
        IEnumerable<string> tries = characters.Length switch
        {
            Length => Replaced(characters).Concat(Exchanged(characters)),
            Length - 1 => Enumerable.Range(0, Length)
                .SelectMany(place => Alphabet.Select(letter => characters.Insert(place, letter.ToString()))),
            Length + 1 => Enumerable.Range(0, Length + 1).Select(place => characters.Remove(place, 1)),
            _ => [],
        };
        return [.. tries.Select(TryRead).OfType<BatchCode>().Distinct().Where(code => code.Value != characters)];
    }

    /// <summary>Says in one sentence how what was typed differs from a code that exists.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="meant">The code that was probably meant.</param>
    public static string Difference(string? typed, BatchCode meant)
    {
        var characters = Bare(typed);
        var first = Enumerable.Range(0, Math.Min(characters.Length, Length))
            .FirstOrDefault(i => characters[i] != meant.Value[i], Math.Min(characters.Length, Length));
        var there = CultureInfo.InvariantCulture;
        if (characters.Length < Length)
        {
            return string.Create(there, $"The {Ordinal(first + 1)} character, “{meant.Value[first]}”, is missing: is it {meant}?");
        }

        if (characters.Length > Length)
        {
            return string.Create(there, $"The {Ordinal(first + 1)} character, “{characters[first]}”, is one too many: is it {meant}?");
        }

        var wrong = Enumerable.Range(0, Length).Count(i => characters[i] != meant.Value[i]);
        return wrong == 2
            ? string.Create(there, $"The {Ordinal(first + 1)} and {Ordinal(first + 2)} characters are exchanged: is it {meant}?")
            : string.Create(
                there,
                $"The {Ordinal(first + 1)} character is “{characters[first]}” here and “{meant.Value[first]}” in a batch that exists: is it {meant}?");
    }

    /// <summary>The code as it is printed, such as <c>7KP-W3MQ</c>.</summary>
    public override string ToString() => Value.Length == Length ? Value[..3] + "-" + Value[3..] : Value;

    private static BatchCode? TryRead(string characters) =>
        characters.Length == Length && characters.All(Alphabet.Contains) && Sum(characters) % Alphabet.Length == 0
            ? new BatchCode(characters)
            : null;

    private static int Sum(ReadOnlySpan<char> characters)
    {
        var sum = 0;
        for (var place = 0; place < characters.Length; place++)
        {
            sum += (Length - place) * Alphabet.IndexOf(characters[place], StringComparison.Ordinal);
        }

        return sum;
    }

    private static string Bare(string? typed) =>
        new([.. (typed ?? "").ToUpperInvariant().Where(letter => !char.IsWhiteSpace(letter) && letter is not ('-' or '–' or '−' or '_' or '.'))]);

    private static IEnumerable<string> Replaced(string characters) => Enumerable.Range(0, Length)
        .SelectMany(place => Alphabet.Select(letter => characters[..place] + letter + characters[(place + 1)..]));

    private static IEnumerable<string> Exchanged(string characters) => Enumerable.Range(0, Length - 1)
        .Select(place => characters[..place] + characters[place + 1] + characters[place] + characters[(place + 2)..]);

    private static string? Strange(char character) => character switch
    {
        'O' or '0' => "is never used in a code. It may be a D, a Q or a 6 on the slip.",
        'I' or '1' => "is never used in a code. It may be an L, a 7 or a T on the slip.",
        'U' => "is never used in a code. It may be a V on the slip.",
        'E' => "is never used in a code. It may be an F or a 3 on the slip.",
        'A' => "is never used in a code. It may be an R, a 4 or an H on the slip.",
        _ => Alphabet.Contains(character, StringComparison.Ordinal) ? null : "doesn't belong in a code.",
    };

    private static string Ordinal(int number) => number switch
    {
        1 => "1st",
        2 => "2nd",
        3 => "3rd",
        _ => string.Create(CultureInfo.InvariantCulture, $"{number}th"),
    };

    private static Outcome<BatchCode> Refuse(string field, string message) =>
        new Outcome<BatchCode>.Refused([new Problem(field, message)]);
}
