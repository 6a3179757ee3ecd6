using System.Globalization;
using PdfSharp.Drawing;

namespace ReedClinic.Documents.Print;

/// <summary>Path data of a drawing, with absolute M, L, H, V, Q and Z, as paths for paper.</summary>
internal sealed class PathData
{
    private readonly List<XGraphicsPath> paths = [];
    private XPoint at;
    private bool isOpen;

    /// <summary>Reads path data.</summary>
    /// <param name="data">The data.</param>
    /// <returns>The paths: closed figures share one, an open line has its own, since PDFsharp would join it to the next; and the box round their points, empty for no points.</returns>
    public static (IReadOnlyList<XGraphicsPath> Paths, XRect Box) Read(string data)
    {
        var read = new PathData();
        var box = XRect.Empty;
        var command = 'M';
        for (var i = 0; i < data.Length;)
        {
            if (char.IsLetter(data[i]))
            {
                command = data[i++];
                if (command == 'Z')
                {
                    read.paths[^1].CloseFigure();
                    read.isOpen = false;
                }

                continue;
            }

            if (data[i] is ' ' or ',')
            {
                i++;
                continue;
            }

            command = read.Step(data, ref i, command);
            box = box.IsEmpty ? new XRect(read.at, new XSize(0.01, 0.01)) : XRect.Union(box, read.at);
        }

        return (read.paths, box);
    }

    private char Step(string data, ref int i, char command)
    {
        var one = Number(data, ref i);
        switch (command)
        {
            case 'H':
                Line(new(one, at.Y));
                return command;
            case 'V':
                Line(new(at.X, one));
                return command;
            case 'M':
                Begin(new(one, Number(data, ref i)));
                return 'L';
            case 'Q':
                var bend = new XPoint(one, Number(data, ref i));
                var to = new XPoint(Number(data, ref i), Number(data, ref i));
                paths[^1].AddBezier(at, Third(at, bend), Third(to, bend), to);
                at = to;
                return command;
            default:
                Line(new(one, Number(data, ref i)));
                return command;
        }
    }

    private void Begin(XPoint from)
    {
        if (isOpen || paths.Count == 0)
        {
            paths.Add(new XGraphicsPath());
        }

        paths[^1].StartFigure();
        (at, isOpen) = (from, true);
    }

    private void Line(XPoint to)
    {
        paths[^1].AddLine(at, to);
        at = to;
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
