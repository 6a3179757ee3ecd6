using System.Buffers.Binary;
using System.Text;

namespace ReedClinic.Circuits;

/// <summary>What one edit does to the children of an element or a component.</summary>
internal enum EditKind
{
    PrependFrame = 1,
    RemoveFrame = 2,
    SetAttribute = 3,
    RemoveAttribute = 4,
    UpdateText = 5,
    StepIn = 6,
    StepOut = 7,
    UpdateMarkup = 8,
    Move = 9,
    MovesEnd = 10,
}

/// <summary>What a frame of a render tree is.</summary>
internal enum FrameKind
{
    Element = 1,
    Text = 2,
    Attribute = 3,
    Component = 4,
    Region = 5,
    Markup = 8,
}

/// <summary>One edit: <paramref name="Other"/> is a frame's index, or the place that a child moves to.</summary>
internal readonly record struct Edit(EditKind Kind, int Sibling, int Other, string? Name);

/// <summary>One frame; what a field means depends on its kind.</summary>
internal readonly record struct Frame(FrameKind Kind, int Length, int ComponentId, string? Name, string? Value, ulong Handler);

/// <summary>Reads the bytes of one render batch: tables, and at the very end five offsets that say where each begins.</summary>
internal sealed class RenderBatch(byte[] data)
{
    private const int FrameLength = 20;
    private const int EditLength = 16;

    /// <summary>The components that changed, each with its edits.</summary>
    public IEnumerable<(int Component, Edit[] Edits)> Changed
    {
        get
        {
            var table = Int(data.Length - 20);
            for (var i = 0; i < Int(table); i++)
            {
                var diff = Int(table + 4 + (i * 4));
                var edits = new Edit[Int(diff + 4)];
                for (var e = 0; e < edits.Length; e++)
                {
                    var at = diff + 8 + (e * EditLength);
                    var kind = (EditKind)Int(at);
                    edits[e] = new Edit(kind, Int(at + 4), Int(at + 8), kind == EditKind.RemoveAttribute ? Text(Int(at + 12)) : null);
                }

                yield return (Int(diff), edits);
            }
        }
    }

    /// <summary>Components that are gone.</summary>
    public IEnumerable<int> DisposedComponents
    {
        get
        {
            var table = Int(data.Length - 12);
            return Enumerable.Range(0, Int(table)).Select(i => Int(table + 4 + (i * 4)));
        }
    }

    /// <summary>Event handlers that are gone.</summary>
    public IEnumerable<ulong> DisposedHandlers
    {
        get
        {
            var table = Int(data.Length - 8);
            return Enumerable.Range(0, Int(table)).Select(i => BinaryPrimitives.ReadUInt64LittleEndian(data.AsSpan(table + 4 + (i * 8))));
        }
    }

    /// <summary>One frame of the trees that edits point into.</summary>
    public Frame this[int index]
    {
        get
        {
            var at = Int(data.Length - 16) + 4 + (index * FrameLength);
            var kind = (FrameKind)Int(at);
            return kind switch
            {
                FrameKind.Element => new(kind, Int(at + 4), 0, Text(Int(at + 8)), null, 0),
                FrameKind.Component => new(kind, Int(at + 4), Int(at + 8), null, null, 0),
                FrameKind.Region => new(kind, Int(at + 4), 0, null, null, 0),
                FrameKind.Text or FrameKind.Markup => new(kind, 1, 0, null, Text(Int(at + 4)), 0),
                FrameKind.Attribute => new(
                    kind, 1, 0, Text(Int(at + 4)), Text(Int(at + 8)), BinaryPrimitives.ReadUInt64LittleEndian(data.AsSpan(at + 12))),
                _ => new(kind, 1, 0, null, null, 0),
            };
        }
    }

    private int Int(int at) => BinaryPrimitives.ReadInt32LittleEndian(data.AsSpan(at));

    private string? Text(int index)
    {
        if (index < 0)
        {
            return null;
        }

        var at = Int(Int(data.Length - 4) + (index * 4));
        var length = 0;
        for (var shift = 0; ; shift += 7)
        {
            var part = data[at++];
            length |= (part & 0x7f) << shift;
            if (part < 0x80)
            {
                return Encoding.UTF8.GetString(data, at, length);
            }
        }
    }
}
