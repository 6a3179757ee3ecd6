using System.Text;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>
/// Reads a wording with its alternatives: <c>{a|b}</c> is one of several, and may hold further ones; <c>[is/was]</c> is the
/// first when it is so today and the second when it was so; <c>&lt;name&gt;</c> is what is filled in, letter for letter.
/// </summary>
internal sealed class Pattern
{
    private readonly string _pattern;
    private readonly Func<int, int> _choose;
    private readonly bool _past;
    private readonly (string Name, string Value)[] _slots;
    private readonly StringBuilder _text = new();
    private int _at;

    private Pattern(string pattern, Func<int, int> choose, bool past, (string Name, string Value)[] slots) =>
        (_pattern, _choose, _past, _slots) = (pattern, choose, past, slots);

    /// <summary>One text of a pattern.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="choose">Gives an index below the number that it is asked with.</param>
    /// <param name="past">Whether it was so and is so no longer.</param>
    /// <param name="slots">What is filled in.</param>
    public static string Fill(string pattern, Func<int, int> choose, bool past, params (string Name, string Value)[] slots)
    {
        var reading = new Pattern(pattern, choose, past, slots);
        reading.Read();
        return reading._text.ToString();
    }

    // Up to the end of the pattern, or of the alternative that stands here.
    private void Read()
    {
        while (_at < _pattern.Length && _pattern[_at] is not ('|' or '}'))
        {
            var sign = _pattern[_at++];
            switch (sign)
            {
                case '{':
                    Choose();
                    break;
                case '[':
                    var tenses = Until(']').Split('/');
                    _text.Append(Apostrophes(tenses[_past ? 1 : 0]));
                    break;
                case '<':
                    var name = Until('>');
                    _text.Append(Array.Find(_slots, slot => slot.Name == name).Value
                        ?? throw new ArgumentException($"Nothing is given for “{name}” in: {_pattern}"));
                    break;
                default:
                    _text.Append(sign == '\'' ? '’' : sign);
                    break;
            }
        }
    }

    private void Choose()
    {
        var starts = new List<int> { _at };
        var end = _at;
        for (var depth = 0; depth >= 0; end++)
        {
            switch (_pattern[end])
            {
                case '{':
                    depth++;
                    break;
                case '}':
                    depth--;
                    break;
                case '|' when depth == 0:
                    starts.Add(end + 1);
                    break;
            }
        }

        _at = starts[_choose(starts.Count)];
        Read();
        _at = end;
    }

    private string Until(char sign)
    {
        var end = _pattern.IndexOf(sign, _at);
        var text = _pattern[_at..end];
        _at = end + 1;
        return text;
    }

    private static string Apostrophes(string text) => text.Replace('\'', '’');
}
