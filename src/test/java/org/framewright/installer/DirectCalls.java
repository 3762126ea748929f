package org.framewright.installer;

import java.io.IOException;
import java.lang.classfile.ClassBuilder;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassModel;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeBuilder;
import java.lang.classfile.CodeElement;
import java.lang.classfile.CodeTransform;
import java.lang.classfile.Label;
import java.lang.classfile.Opcode;
import java.lang.classfile.TypeKind;
import java.lang.classfile.instruction.InvokeDynamicInstruction;
import java.lang.classfile.instruction.InvokeInstruction;
import java.lang.classfile.instruction.SwitchCase;
import java.lang.constant.ClassDesc;
import java.lang.constant.ConstantDescs;
import java.lang.constant.DirectMethodHandleDesc;
import java.lang.constant.MethodTypeDesc;
import java.lang.reflect.AccessFlag;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Writes out what Java otherwise makes while the program runs and no cache keeps: {@code equals}
 * and {@code hashCode} of records (the JDK's {@code ObjectMethods}), the choice among the types of
 * a pattern switch ({@code SwitchBootstraps.typeSwitch}), and the comparators of {@link
 * PlainComparators}. Each place of a program costs about a millisecond at its first use, and the
 * first of all ten; a command passes some twenty. What they answer is the same.
 */
final class DirectCalls {
  private static final ClassDesc OBJECT_METHODS = runtime("ObjectMethods");
  private static final ClassDesc SWITCHES = runtime("SwitchBootstraps");
  private static final ClassDesc COMPARATOR = ClassDesc.of("java.util.Comparator");
  private static final ClassDesc COMPARATORS = ClassDesc.of(PlainComparators.class.getName());
  private static final ClassDesc OBJECTS = ClassDesc.of("java.util.Objects");
  private static final MethodTypeDesc EQUAL_OBJECTS =
      MethodTypeDesc.of(ConstantDescs.CD_boolean, ConstantDescs.CD_Object, ConstantDescs.CD_Object);

  private DirectCalls() {}

  private static ClassDesc runtime(String name) {
    return ClassDesc.of("java.lang.runtime", name);
  }

  /** Replaces the jar. */
  static void write(Path jar) throws IOException {
    var classes = JarClasses.classFiles();
    JarClasses.rewrite(jar, bytes -> written(classes, bytes), PlainComparators.class);
  }

  private static byte[] written(ClassFile classes, byte[] bytes) {
    var parsed = classes.parse(bytes);
    var added = new ArrayList<Added>();
    return classes.transformClass(
        parsed,
        ClassTransform.transformingMethodBodies(calling(parsed, added))
            .andThen(ClassTransform.endHandler(builder -> add(added, builder))));
  }

  /** A method that a class gets: what one place of it did by a call that Java made. */
  private record Added(String name, MethodTypeDesc type, Consumer<CodeBuilder> body) {}

  private static void add(List<Added> methods, ClassBuilder builder) {
    for (var method : methods) {
      builder.withMethodBody(
          method.name(),
          method.type(),
          ClassFile.ACC_PRIVATE | ClassFile.ACC_STATIC | ClassFile.ACC_SYNTHETIC,
          method.body());
    }
  }

  private static CodeTransform calling(ClassModel type, List<Added> added) {
    return (builder, element) -> {
      if (element instanceof InvokeInstruction call && isOfComparator(call)) {
        builder.invokestatic(COMPARATORS, call.name().stringValue(), plain(call));
        return;
      }
      var method = direct(element, added.size());
      if (method.isEmpty()) {
        builder.with(element);
        return;
      }
      added.add(method.get());
      builder.invokestatic(
          type.thisClass().asSymbol(),
          method.get().name(),
          method.get().type(),
          type.flags().has(AccessFlag.INTERFACE));
    };
  }

  private static boolean isOfComparator(InvokeInstruction call) {
    var name = call.name().stringValue();
    return call.owner().asSymbol().equals(COMPARATOR)
        && (name.startsWith("comparing") || name.startsWith("thenComparing"));
  }

  /** One that was called on a comparator gets it as its first argument. */
  private static MethodTypeDesc plain(InvokeInstruction call) {
    return call.opcode() == Opcode.INVOKESTATIC
        ? call.typeSymbol()
        : call.typeSymbol().insertParameterTypes(0, COMPARATOR);
  }

  private static Optional<Added> direct(CodeElement element, int number) {
    if (!(element instanceof InvokeDynamicInstruction call)) {
      return Optional.empty();
    }
    var maker = call.bootstrapMethod().owner();
    var what = call.name().stringValue();
    Consumer<CodeBuilder> body;
    if (maker.equals(OBJECT_METHODS) && what.equals("equals")) {
      body = equality(call);
    } else if (maker.equals(OBJECT_METHODS) && what.equals("hashCode")) {
      body = hash(call);
    } else if (maker.equals(SWITCHES) && what.equals("typeSwitch") && hasTypesOnly(call)) {
      body = choice(call);
    } else {
      return Optional.empty();
    }
    return Optional.of(new Added(what + "$direct" + number, call.typeSymbol(), body));
  }

  /** Arguments: the record's type, the names of its components, and a getter for each. */
  private static List<DirectMethodHandleDesc> components(InvokeDynamicInstruction call) {
    return call.bootstrapArgs().stream()
        .skip(2)
        .map(getter -> (DirectMethodHandleDesc) getter)
        .toList();
  }

  private static ClassDesc type(DirectMethodHandleDesc component) {
    return component.invocationType().returnType();
  }

  private static void get(CodeBuilder code, int slot, DirectMethodHandleDesc component) {
    code.aload(slot).getfield(component.owner(), component.methodName(), type(component));
  }

  private static Consumer<CodeBuilder> equality(InvokeDynamicInstruction call) {
    var record = call.typeSymbol().parameterType(0);
    return code -> {
      var different = code.newLabel();
      var another = code.newLabel();
      code.aload(0).aload(1).if_acmpne(another).iconst_1().ireturn().labelBinding(another);
      code.aload(1).instanceOf(record).ifeq(different);
      code.aload(1).checkcast(record).astore(2);
      for (var component : components(call)) {
        get(code, 0, component);
        get(code, 2, component);
        compare(code, type(component), different);
      }
      code.iconst_1().ireturn().labelBinding(different).iconst_0().ireturn();
    };
  }

  private static void compare(CodeBuilder code, ClassDesc type, Label different) {
    switch (TypeKind.from(type)) {
      case REFERENCE -> code.invokestatic(OBJECTS, "equals", EQUAL_OBJECTS).ifeq(different);
      case LONG -> code.lcmp().ifne(different);
      // As ObjectMethods says: NaN is NaN, and 0 is not -0.
      case FLOAT, DOUBLE ->
          code.invokestatic(
                  box(type), "compare", MethodTypeDesc.of(ConstantDescs.CD_int, type, type))
              .ifne(different);
      default -> code.if_icmpne(different);
    }
  }

  private static Consumer<CodeBuilder> hash(InvokeDynamicInstruction call) {
    return code -> {
      code.iconst_0();
      for (var component : components(call)) {
        code.bipush(31).imul();
        get(code, 0, component);
        var type = type(component);
        if (type.isPrimitive()) {
          code.invokestatic(box(type), "hashCode", MethodTypeDesc.of(ConstantDescs.CD_int, type));
        } else {
          code.invokestatic(
              OBJECTS,
              "hashCode",
              MethodTypeDesc.of(ConstantDescs.CD_int, ConstantDescs.CD_Object));
        }
        code.iadd();
      }
      code.ireturn();
    };
  }

  private static ClassDesc box(ClassDesc primitive) {
    return ClassDesc.of(
        "java.lang",
        switch (primitive.descriptorString().charAt(0)) {
          case 'B' -> "Byte";
          case 'C' -> "Character";
          case 'D' -> "Double";
          case 'F' -> "Float";
          case 'I' -> "Integer";
          case 'J' -> "Long";
          case 'S' -> "Short";
          default -> "Boolean";
        });
  }

  private static boolean hasTypesOnly(InvokeDynamicInstruction call) {
    return call.bootstrapArgs().stream()
        .allMatch(label -> label instanceof ClassDesc type && !type.isPrimitive());
  }

  /** The first of the types, from the given one on, that a value is of; -1 for null. */
  private static Consumer<CodeBuilder> choice(InvokeDynamicInstruction call) {
    var types = call.bootstrapArgs();
    return code -> {
      var there = code.newLabel();
      var none = code.newLabel();
      var tries = types.stream().map(type -> code.newLabel()).toList();
      code.aload(0).ifnonnull(there).iconst_m1().ireturn().labelBinding(there);
      var cases = new ArrayList<SwitchCase>();
      for (int i = 0; i < types.size(); i++) {
        cases.add(SwitchCase.of(i, tries.get(i)));
      }
      code.iload(1).tableswitch(0, Math.max(0, types.size() - 1), none, cases);
      for (int i = 0; i < types.size(); i++) {
        var next = i + 1 < types.size() ? tries.get(i + 1) : none;
        code.labelBinding(tries.get(i));
        code.aload(0).instanceOf((ClassDesc) types.get(i)).ifeq(next);
        code.loadConstant(i).ireturn();
      }
      code.labelBinding(none).loadConstant(types.size()).ireturn();
    };
  }
}
