namespace ReedClinic.Architecture.Tests.Screens;

/// <summary>Blanks the C# in a Razor text: <c>@name.chain(...)[...]</c>, <c>@(...)</c>, <c>@code {...}</c>, and the code of control blocks.</summary>
public sealed class RazorCode
{
    private static readonly string[] Blocks = ["if", "for", "foreach", "while", "switch", "lock", "try", "do"];
    private static readonly string[] Void = ["area", "base", "br", "col", "hr", "img", "input", "link", "meta", "source", "wbr"];

    private readonly char[] _text;
    private int _at;

    private RazorCode(string text) => _text = text.ToCharArray();

    public static string Blank(string text)
    {
        var reader = new RazorCode(text);
        reader.Markup(oneElement: false);
        return new string(reader._text);
    }

    public static string Spaces(string text) => string.Create(text.Length, text, (span, from) =>
    {
        for (var i = 0; i < span.Length; i++)
        {
            span[i] = from[i] == '\n' ? '\n' : ' ';
        }
    });

    private char Now => _at < _text.Length ? _text[_at] : '\0';

    private char Next => _at + 1 < _text.Length ? _text[_at + 1] : '\0';

    /// <summary>Reads markup to the end; inside code, one element with all that is in it.</summary>
    private void Markup(bool oneElement)
    {
        var depth = 0;
        while (_at < _text.Length)
        {
            if (Now == '@')
            {
                Transition();
            }
            else if (Now == '<' && (char.IsLetter(Next) || Next == '/'))
            {
                depth += OneTag();
                if (oneElement && depth <= 0)
                {
                    return;
                }
            }
            else
            {
                _at++;
            }
        }
    }

    /// <summary>Reads a tag with its attributes; +1 opens, −1 closes, 0 stands alone.</summary>
    private int OneTag()
    {
        var closes = Next == '/';
        var start = _at + 1;
        var quote = '\0';
        while (_at < _text.Length && !(Now == '>' && quote == '\0'))
        {
            if (Now == '@' && quote != '\0')
            {
                Transition();
                continue;
            }

            if (Now is '"' or '\'' && (quote == '\0' || quote == Now))
            {
                quote = quote == '\0' ? Now : '\0';
            }

            _at++;
        }

        var name = new string([.. _text.Skip(start).TakeWhile(char.IsLetterOrDigit)]);
        var alone = _text[_at - 1] == '/';
        _at++;
        return closes ? -1 : alone || Void.Contains(name) ? 0 : 1;
    }

    private void Transition()
    {
        var start = _at++;
        if (Now == '@') // an at sign itself
        {
            _at++;
        }
        else if (Now is '(' or '{')
        {
            Balanced(code: Now == '{');
            return;
        }
        else if (char.IsLetter(Now) || Now == '_')
        {
            var word = Identifier();
            Wipe(start);
            if (word == "code")
            {
                SkipWhite();
                Balanced(code: false);
            }
            else if (Blocks.Contains(word))
            {
                Block();
            }
            else
            {
                Chain(word);
            }

            return;
        }

        Wipe(start);
    }

    private void Block()
    {
        do
        {
            SkipWhite();
            if (Now == '(')
            {
                Balanced(code: false);
                SkipWhite();
            }

            if (Now == '{')
            {
                Balanced(code: true);
            }
        }
        while (GoesOn());
    }

    private bool GoesOn()
    {
        var back = _at;
        SkipWhite();
        var start = _at;
        if (Identifier() is not ("else" or "catch" or "finally"))
        {
            _at = back;
            return false;
        }

        SkipWhite();
        Identifier(); // else if
        Wipe(start);
        return true;
    }

    private string Identifier()
    {
        var start = _at;
        while (char.IsLetterOrDigit(Now) || Now == '_')
        {
            _at++;
        }

        return new string(_text, start, _at - start);
    }

    private void Chain(string word)
    {
        var start = _at;
        if (word == "await")
        {
            SkipWhite();
            Identifier();
        }

        while (true)
        {
            if (Now is '(' or '[')
            {
                Balanced(code: false);
            }
            else if ((Now == '.' && char.IsLetter(Next)) || (Now == '?' && Next == '.') || (Now == '!' && Next is '.' or '['))
            {
                _at += Now == '?' ? 2 : 1;
                Identifier();
            }
            else
            {
                Wipe(start);
                return;
            }
        }
    }

    /// <summary>From an opening bracket to its close. In a code block, elements are left to <see cref="Markup"/>; all else is blanked.</summary>
    private void Balanced(bool code)
    {
        var depth = 0;
        var mark = _at;
        var last = '\0';
        do
        {
            if (code && Now == '<' && char.IsLetter(Next) && last is '{' or '}' or ';' or ':' or '>' or ')')
            {
                Wipe(mark);
                Markup(oneElement: true);
                (mark, last) = (_at, '>');
                continue;
            }

            if (code && Now == '@' && char.IsLetter(Next)) // a bare @Body or a nested @if
            {
                Wipe(mark);
                Transition();
                (mark, last) = (_at, '}');
                continue;
            }

            depth += Now is '(' or '[' or '{' ? 1 : Now is ')' or ']' or '}' ? -1 : 0;
            last = char.IsWhiteSpace(Now) ? last : Now;
            _at += Now == '"' ? StringLiteral() : 1;
        }
        while (depth > 0 && _at < _text.Length);

        Wipe(mark);
    }

    private int StringLiteral()
    {
        var end = _at + 1;
        while (end < _text.Length && _text[end] != '"')
        {
            end += _text[end] == '\\' ? 2 : 1;
        }

        return end + 1 - _at;
    }

    private void SkipWhite()
    {
        while (char.IsWhiteSpace(Now))
        {
            _at++;
        }
    }

    private void Wipe(int from)
    {
        for (var i = from; i < Math.Min(_at, _text.Length); i++)
        {
            _text[i] = _text[i] == '\n' ? '\n' : ' ';
        }
    }
}
