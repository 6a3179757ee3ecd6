using System.Globalization;
using PdfSharp.Drawing;

namespace ReedClinic.Documents.Print;

/// <summary>Path data of a drawing, with absolute M, L, H, V, Q and Z, as a path for paper.</summary>
internal static class PathData
{
    /// <summary>Reads path data.</summary>
    /// <param name="data">The data.</param>
    /// <returns>The path, and the box round its points; an empty box for no points.</returns>
    public static (XGraphicsPath Path, XRect Box) Read(string data)
    {
        var path = new XGraphicsPath();
        var (at, box) = (new XPoint(), XRect.Empty);
        var command = 'M';
        for (var i = 0; i < data.Length;)
        {
            if (char.IsLetter(data[i]))
            {
                command = data[i++];
                if (command == 'Z')
                {
                    path.CloseFigure();
                }

                continue;
            }

            if (data[i] is ' ' or ',')
            {
                i++;
                continue;
            }

            (at, command) = Step(path, data, ref i, at, command);
            box = box.IsEmpty ? new XRect(at, new XSize(0.01, 0.01)) : XRect.Union(box, at);
        }

        return (path, box);
    }

    private static (XPoint At, char Command) Step(XGraphicsPath path, string data, ref int i, XPoint at, char command)
    {
        var one = Number(data, ref i);
        switch (command)
        {
            case 'H':
                return (Line(path, at, new(one, at.Y)), command);
            case 'V':
                return (Line(path, at, new(at.X, one)), command);
            case 'M':
                path.StartFigure();
                return (new(one, Number(data, ref i)), 'L');
            case 'Q':
                var bend = new XPoint(one, Number(data, ref i));
                var to = new XPoint(Number(data, ref i), Number(data, ref i));
                path.AddBezier(at, Third(at, bend), Third(to, bend), to);
                return (to, command);
            default:
                return (Line(path, at, new(one, Number(data, ref i))), command);
        }
    }

    private static XPoint Line(XGraphicsPath path, XPoint from, XPoint to)
    {
        path.AddLine(from, to);
        return to;
    }

    // A curve with one point of bending is the same as one with two, each two thirds of the way to it.
    private static XPoint Third(XPoint end, XPoint bend) => new(end.X + ((bend.X - end.X) * 2 / 3), end.Y + ((bend.Y - end.Y) * 2 / 3));

    private static double Number(string data, ref int i)
    {
        while (data[i] is ' ' or ',')
        {
            i++;
        }

        var from = i;
        while (i < data.Length && (char.IsAsciiDigit(data[i]) || data[i] == '.' || (data[i] == '-' && i == from)))
        {
            i++;
        }

        return double.Parse(data.AsSpan(from, i - from), NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
